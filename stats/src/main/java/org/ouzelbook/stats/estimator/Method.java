package org.ouzelbook.stats.estimator;

/** A published method, with the source to look it up in. */
public enum Method {
    /** Score interval for a proportion. */
    WILSON("E. B. Wilson (1927), J. Am. Stat. Assoc. 22:209–212"),
    /** Exact interval for a proportion. */
    CLOPPER_PEARSON("C. J. Clopper & E. S. Pearson (1934), Biometrika 26:404–413"),
    /** Exact interval for a Poisson count or rate. */
    GARWOOD("F. Garwood (1936), Biometrika 28:437–442"),
    /** Exact conditional comparison of two Poisson rates. */
    CONDITIONAL_RATE_RATIO("J. Przyborowski & H. Wilenski (1940), Biometrika 31:313–323"),
    /** Difference of two Poisson rates, its limits recovered from those of each. */
    RATE_DIFFERENCE("G. Y. Zou & A. Donner (2008), Stat. Med. 27:1693–1702"),
    /** Log-linear Poisson model with an effect for each site. */
    LOG_LINEAR_POISSON("P. McCullagh & J. A. Nelder (1989), Generalized Linear Models, chapters 6 and 9"),
    /** The same, with variances scaled by Pearson's X² over its degrees of freedom. */
    LOG_LINEAR_QUASI_POISSON("P. McCullagh & J. A. Nelder (1989), Generalized Linear Models, chapters 6 and 9"),
    /** One estimate from several sets of data in which what is not known was drawn. */
    MULTIPLE_IMPUTATION(
            "D. B. Rubin (1987), Multiple Imputation for Nonresponse in Surveys; J. Barnard & D. B. Rubin (1999), Biometrika 86:948–955"),
    /** Log-linear model of negative binomial counts with an effect for each site. */
    LOG_LINEAR_NEGATIVE_BINOMIAL("J. F. Lawless (1987), Can. J. Stat. 15:209–225"),
    /** Log-linear model with an effect for each site and serial correlation within it. */
    LOG_LINEAR_SERIAL("K.-Y. Liang & S. L. Zeger (1986), Biometrika 73:13–22"),
    /** Smooth curve on the log scale with an effect for each site. */
    PENALISED_SPLINE(
            "P. H. C. Eilers & B. D. Marx (1996), Stat. Sci. 11:89–121; S. N. Wood (2011), J. R. Stat. Soc. B 73:3–36"),
    /** Occupancy of sites in one season, detected imperfectly. */
    SEASON_OCCUPANCY("D. I. MacKenzie et al. (2002), Ecology 83:2248–2255"),
    /** Occupancy of sites over seasons, detected imperfectly. */
    DYNAMIC_OCCUPANCY("D. I. MacKenzie et al. (2003), Ecology 84:2200–2207"),
    /** Rank test for a trend, with the median of the pairwise slopes. */
    KENDALL_THEIL_SEN("H. B. Mann (1945), Econometrica 13:245–259; P. K. Sen (1968), J. Am. Stat. Assoc. 63:1379–1389"),
    /** Daily survival of nests: losses by exposure days. */
    EXPOSURE_DAYS("H. F. Mayfield (1961), Wilson Bull. 73:255–261; D. H. Johnson (1979), Auk 96:651–661"),
    /** Daily survival of nests: logistic regression with the interval's length as exponent. */
    LOGISTIC_EXPOSURE("T. L. Shaffer (2004), Auk 121:526–540"),
    /** Apparent survival and resighting of marked animals. */
    CORMACK_JOLLY_SEBER("J.-D. Lebreton, K. P. Burnham, J. Clobert & D. R. Anderson (1992), Ecol. Monogr. 62:67–118");

    private final String source;

    Method(String source) {
        this.source = source;
    }

    /** {@return where the method was published} */
    public String source() {
        return source;
    }
}
