# The same models by base R: glm for a line with site effects, optim where glm would need a matrix of all sites.
arguments <- commandArgs(TRUE)
table <- read.csv(arguments[2], check.names = FALSE)
if (arguments[1] == "glm") {
  fit <- glm(count ~ factor(site) + I(year - min(year)), poisson, table)
  cat(sprintf("%.9f %.9f\n", tail(coef(fit), 1), tail(sqrt(diag(vcov(fit))), 1)))
} else if (arguments[1] == "line") {
  # Site effects profiled out: given its total a site's counts are multinomial.
  wide <- matrix(table$count, ncol = length(unique(table$year)), byrow = TRUE)
  t <- seq_len(ncol(wide)) - 1
  low <- function(b) -sum(colSums(wide) * (b * t - log(sum(exp(b * t)))))
  fit <- optim(0, low, method = "BFGS", hessian = TRUE, control = list(reltol = 1e-14))
  cat(sprintf("%.9f %.9f\n", fit$par, sqrt(1 / fit$hessian[1, 1])))
} else {
  y <- as.matrix(table[, -1])
  season <- factor(sub("[.].*", "", colnames(y)))
  made <- sapply(levels(season), function(s) rowSums(!is.na(y[, season == s])))
  found <- sapply(levels(season), function(s) rowSums(y[, season == s], na.rm = TRUE))
  low <- function(par) {
    q <- plogis(par)
    seen <- q[4]^found * (1 - q[4])^(made - found)
    none <- found == 0
    f1 <- q[1] * seen[, 1]
    f0 <- (1 - q[1]) * none[, 1]
    for (s in 2:ncol(seen)) {
      g1 <- (f1 * (1 - q[3]) + f0 * q[2]) * seen[, s]
      f0 <- (f1 * q[3] + f0 * (1 - q[2])) * none[, s]
      f1 <- g1
    }
    -sum(log(f1 + f0))
  }
  fit <- optim(c(0, -1, -1, 0), low, method = "BFGS", hessian = TRUE, control = list(reltol = 1e-12, maxit = 500))
  cat(sprintf("%.6f", fit$par), sprintf("%.6f", sqrt(diag(solve(fit$hessian)))), "\n")
}
