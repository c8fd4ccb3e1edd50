package org.ouzelbook.stats.estimator;

/** Why an answer is refused, is one-sided, or needs care. The facts that go with each stand in brackets. */
public enum Reason {
    /** No trials: a proportion of nothing. */
    NO_TRIALS,
    /** No exposure: a rate over nothing. */
    NO_EXPOSURE,
    /** The estimate lies at 0 or 1: it has no standard error, and only the other limit says something. */
    AT_BOUNDARY,
    /** Both counts are zero: their ratio could be anything. */
    BOTH_COUNTS_ZERO,
    /** The first count is zero: the ratio has an upper limit only. */
    FIRST_COUNT_ZERO,
    /** The second count is zero: the ratio has a lower limit only. */
    SECOND_COUNT_ZERO,
    /** Fewer values than needed [how many there are, how many are needed]. */
    TOO_FEW_VALUES,
    /** More values than can be compared in pairs [how many there are, how many can be]. */
    TOO_MANY_VALUES,
    /** More values than the exact probability is worked out for [how many there are, how many can be]. */
    TOO_MANY_FOR_EXACT,
    /** All values are the same, so their order says nothing. */
    ALL_VALUES_EQUAL,
    /** All values belong to one point in time. */
    ONE_POINT_IN_TIME,
    /** Too few values for the slope's limits, of which at least one is infinite [how many values there are]. */
    SLOPE_LIMIT_OPEN,
    /** Several values belong to one point in time, so there is no exact probability. */
    REPEATED_TIMES,
    /** No count at all. */
    NOTHING_COUNTED,
    /** Every count is zero. */
    ALL_COUNTS_ZERO,
    /** Counts with birds in only one season [that season]. */
    ONE_SEASON,
    /** More seasons than a trend is worked out for [how many there are, how many can be]. */
    TOO_MANY_SEASONS,
    /** No site with birds was counted in more than one season. */
    NO_SITE_IN_TWO_SEASONS,
    /** Each site's birds all stand in its first counted season, so the slope is minus infinity. */
    ONLY_IN_FIRST_SEASONS,
    /** Each site's birds all stand in its last counted season, so the slope is infinite. */
    ONLY_IN_LAST_SEASONS,
    /** Seasons that no site's birds compare with the first, both ways [list of those seasons]. */
    SEASONS_NOT_LINKED,
    /** A season that has no effect on the log scale: not counted, or only zeros [that season]. */
    SEASON_WITHOUT_EFFECT,
    /** The fit did not converge. */
    NOT_CONVERGED,
    /** Sites where every count is zero take no part in the fit [how many, list of some names]. */
    EMPTY_SITES,
    /** Seasons in which only zeros were counted: the effect is minus infinity [list of seasons]. */
    EMPTY_SEASONS,
    /** Seasons in which no site that ever had birds was counted [list of seasons]. */
    SEASONS_WITHOUT_INFORMATION,
    /** Seasons between the first and the last in which nothing was counted [list of years and runs of years]. */
    SEASONS_NOT_COUNTED,
    /** As many parameters as counts: spread about the model cannot be judged, and is taken to be Poisson. */
    NO_DEGREES_OF_FREEDOM,
    /** Counts vary more than Poisson and limits are widened for it; AIC is not [X²/df]. */
    OVERDISPERSED,
    /** Counts vary more than Poisson, by a test at 5 %, and limits are not widened for it [X²/df]. */
    OVERDISPERSION_IGNORED,
    /** Counts vary less than Poisson, by a test at 5 %; limits are not narrowed for it [X²/df]. */
    UNDERDISPERSED,
    /** Counts vary no more than Poisson counts, so the negative binomial law is that of Poisson. */
    NO_NEGATIVE_BINOMIAL_SPREAD,
    /** Seasons at which the slope was to change that do not lie between others with counts [those seasons]. */
    CHANGE_NOT_BETWEEN_SEASONS,
    /** No birds before the first change of slope, or after the last, so the slope there has no end [0 before or 1 after, that season]. */
    NO_BIRDS_BEYOND_CHANGE,
    /** Some sets of drawn counts have no answer, so they have none together [how many have none, of how many]. */
    DRAWN_SETS_WITHOUT_ANSWER,
    /** Terms of a model that only repeat what other terms say [list of terms]. */
    TERMS_REPEAT_OTHERS,
    /** The data do not tell this parameter from others, of which they set only a combination. */
    NOT_TOLD_APART,
    /** The likelihood has several peaks, of which the highest is given [how many, how much lower the next one lies]. */
    SEVERAL_PEAKS,
    /** The likelihood has several peaks of one height at different places, of which one is given [how many]. */
    EQUAL_PEAKS,
    /** The curve’s limits lie more than a hundredfold away on either side [list of those seasons]: too few birds hold it. */
    CURVE_NOT_HELD,
    /** An upper limit would lie more than a hundredfold away, so none is given. */
    NO_UPPER_LIMIT,
    /** Seasons whose total has no upper limit, which would lie more than a hundredfold away [list of those seasons]. */
    SEASONS_WITHOUT_UPPER_LIMIT,
    /** The upper limit of every season’s total lies more than a hundredfold away [list of the seasons]: too few birds hold them. */
    SEASONS_NOT_HELD,
    /** No nest was found alive and looked at again. */
    NO_NEST_DAYS,
    /** More losses than exposure days [losses, days]: nests were found too late to say how long they lasted. */
    MORE_LOSSES_THAN_DAYS,
    /** Nests were watched with eggs only, or with young only, so there are no two stages. */
    ONE_STAGE,
    /** Fewer than two occasions [how many]: nobody could be seen again. */
    TOO_FEW_OCCASIONS,
    /** No animal was met before the last occasion. */
    NONE_RELEASED,
    /** No animal was ever met again [how many releases]: survival and resighting cannot be told apart. */
    NONE_SEEN_AGAIN,
    /** No site was visited. */
    NO_VISITS,
    /** The species was not detected on any visit [how many visits, to how many sites]. */
    NEVER_DETECTED,
    /** Sites without a visit: they count in occupancy as their covariates say [how many]. */
    SITES_NOT_VISITED,
    /** No site was visited twice in a season, so only covariates part occupancy from detection. */
    ONE_VISIT_A_SEASON,
    /** A parameter lies at the end of its range; limits of what follows from it take it as known. */
    BOUNDARY_TAKEN_AS_KNOWN,
    /** Visits in one season only: nothing changes. */
    ONE_SEASON_OF_VISITS,
    /** Gains and losses differ by season, so there is no share that they tend to. */
    CHANGES_BY_SEASON,
    /** Neither gains nor losses. */
    NO_CHANGE_AT_ALL,
    /** No site is occupied in the season that is compared. */
    NOTHING_OCCUPIED,
    /** Every set of visits fits perfectly, so there is nothing to test. */
    NOTHING_TO_TEST
}
