# Invented data for the comparison of speed, the same every time: base R only.
set.seed(20)
counts <- function(sites, seasons, file) {
  level <- rgamma(sites, 2, 0.7)
  mean <- outer(level, 0.98^(seq_len(seasons) - 1))
  table <- data.frame(site = rep(seq_len(sites), each = seasons), year = rep(1985 + seq_len(seasons) - 1, sites),
                      count = rpois(sites * seasons, as.vector(t(mean))))
  write.csv(table, file, row.names = FALSE, quote = FALSE)
}
counts(300, 40, "counts-300.csv")
counts(10000, 40, "counts-10000.csv")
visits <- function(sites, seasons, occasions, file) {
  occupied <- matrix(0, sites, seasons)
  occupied[, 1] <- rbinom(sites, 1, 0.6)
  for (s in 2:seasons) occupied[, s] <- rbinom(sites, 1, ifelse(occupied[, s - 1] == 1, 1 - 0.2, 0.15))
  found <- matrix(rbinom(sites * seasons * occasions, 1, 0.5), sites) * occupied[, rep(seq_len(seasons), each = occasions)]
  found[runif(length(found)) < 0.1] <- NA
  colnames(found) <- paste(rep(2000 + seq_len(seasons), each = occasions), rep(seq_len(occasions), seasons), sep = ".")
  write.csv(cbind(site = seq_len(sites), found), file, row.names = FALSE, quote = FALSE, na = "")
}
visits(2000, 20, 4, "visits-2000.csv")
