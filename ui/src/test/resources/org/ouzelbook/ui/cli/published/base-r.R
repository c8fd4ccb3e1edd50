# Values that published-examples.csv holds beside those of papers: base R only, no package. Run with Rscript; it also writes the tables.
show <- function(name, value) cat(name, formatC(value, digits = 10, format = "g"), "\n")
glm <- function(...) stats::glm(..., control = list(epsilon = 1e-15, maxit = 100))
coefficients <- function(name, fit) {
  table <- summary(fit)$coefficients
  for (term in rownames(table)) show(paste(name, term), table[term, 1:2])
}

# The example of ?glm: A. J. Dobson (1990), An Introduction to Generalized Linear Models.
counts <- c(18, 17, 15, 20, 10, 20, 25, 13, 12)
outcome <- gl(3, 1, 9)
treatment <- gl(3, 3)
dobson <- glm(counts ~ treatment + outcome, family = poisson())
coefficients("dobson", dobson)
show("dobson deviance, AIC, log-likelihood", c(deviance(dobson), AIC(dobson), logLik(dobson)))

# ?warpbreaks: breaks of yarn by wool and tension (Tippett 1950; McNeil 1977); the nine looms of each are added up.
breaks <- aggregate(breaks ~ wool + tension, warpbreaks, sum)
breaks$year <- 2000 + as.integer(breaks$tension)
write.csv(data.frame(site = breaks$wool, year = breaks$year, count = breaks$breaks), "warpbreaks.csv", row.names = FALSE, quote = FALSE)
coefficients("warpbreaks seasons", glm(breaks ~ wool + tension, poisson, breaks))
quasi <- glm(breaks ~ wool + tension, quasipoisson, breaks)
coefficients("warpbreaks seasons quasi", quasi)
show("warpbreaks dispersion", summary(quasi)$dispersion)
coefficients("warpbreaks line quasi", glm(breaks ~ wool + year, quasipoisson, breaks))

# ?discoveries: great inventions and discoveries in each year from 1860 to 1959 (McNeil 1977).
found <- data.frame(site = "world", year = 1860:1959, count = as.integer(discoveries))
write.csv(found, "discoveries.csv", row.names = FALSE, quote = FALSE)
line <- glm(count ~ year, quasipoisson, found)
coefficients("discoveries line", line)
show("discoveries deviance, dispersion", c(deviance(line), summary(line)$dispersion))
show("discoveries limits", coef(line)[2] + c(-1, 1) * qt(0.975, 98) * summary(line)$coefficients[2, 2])
show("discoveries log-likelihood", logLik(glm(count ~ year, poisson, found)))
bent <- glm(count ~ year + pmax(0, year - 1900), quasipoisson, found)
coefficients("discoveries bent", bent)
# Negative binomial: theta, intercept and slope together by optim.
low <- function(par) -sum(dnbinom(found$count, size = exp(par[1]), mu = exp(par[2] + par[3] * (found$year - 1910)), log = TRUE))
best <- optim(c(2, 1, -0.01), low, method = "BFGS", control = list(reltol = 1e-15, maxit = 1000))
best <- optim(best$par, low, method = "BFGS", control = list(reltol = 1e-15, maxit = 1000, ndeps = rep(1e-5, 3)))
show("discoveries negative binomial 1/theta, slope, log-likelihood", c(1 / exp(best$par[1]), best$par[3], -best$value))

# ?infert: infertility after abortions, cases and controls (Trichopoulos et al. 1976). One day each makes survival logistic.
write.csv(data.frame(nest = seq_len(nrow(infert)), days = 1, survived = infert$case, spontaneous = infert$spontaneous, induced = infert$induced,
                     education = gsub(" ", "", infert$education)), "infert.csv", row.names = FALSE, quote = FALSE)
logistic <- glm(case ~ spontaneous + induced, binomial, infert)
coefficients("infert", logistic)
show("infert log-likelihood, AIC", c(logLik(logistic), AIC(logistic)))
coefficients("infert education", glm(case ~ spontaneous + education, binomial, infert))

# ?Nile: annual flow at Aswan, 1871 to 1970. Kendall's tau with ties, normal with continuity; Theil's slope by hand.
flow <- data.frame(year = 1871:1970, value = as.numeric(Nile))
write.csv(flow, "nile.csv", row.names = FALSE, quote = FALSE)
n <- nrow(flow)
pairs <- combn(n, 2)
slopes <- (flow$value[pairs[2, ]] - flow$value[pairs[1, ]]) / (flow$year[pairs[2, ]] - flow$year[pairs[1, ]])
s <- sum(sign(slopes))
ties <- table(flow$value)
var <- (n * (n - 1) * (2 * n + 5) - sum(ties * (ties - 1) * (2 * ties + 5))) / 18
show("nile S, var S, z, tau-b", c(s, var, (s - sign(s)) / sqrt(var), cor(flow$year, flow$value, method = "kendall")))
test <- cor.test(flow$year, flow$value, method = "kendall", exact = FALSE, continuity = TRUE)
show("nile z and p of cor.test", c(test$statistic, test$p.value))
show("nile slope", median(slopes))
rank <- (length(slopes) - qnorm(0.975) * sqrt(var)) / 2
limit <- function(rank) { sorted <- sort(slopes); low <- floor(rank); sorted[low] + (rank - low) * (sorted[low + 1] - sorted[low]) }
show("nile limits", c(limit(rank), limit(length(slopes) - rank + 1)))
# poisson.test and binom.test
show("poisson.test 11 over 800 against 31 over 1,000", c(poisson.test(c(11, 31), c(800, 1000))$estimate, poisson.test(c(11, 31), c(800, 1000))$conf.int))
show("poisson.test 137 over 24.19893", poisson.test(137, 24.19893)$conf.int)
show("binom.test 682 of 925", c(binom.test(682, 925)$conf.int, prop.test(682, 925, correct = FALSE)$conf.int))
