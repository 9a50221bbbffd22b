# The peer's part of survival.sh: arguments `lives`, regression file, repetitions; or `grid`, grid file.
suppressMessages(library(survival))
a <- commandArgs(TRUE)
columns <- function(file, count) {
  all <- readBin(file, "double", n = file.size(file) / 8, endian = "big")
  matrix(all, ncol = count)
}
regression <- function() {
  d <- columns(a[2], 8)
  lower <- ifelse(d[, 2] == 0, NA, d[, 2])
  upper <- ifelse(is.infinite(d[, 3]), NA, d[, 3])
  frame <- data.frame(lower, upper, d[, 4:8])
  names(frame)[3:7] <- c("coldDepot", "partB", "axle", "heat", "load")
  # A life of which nothing is known but that it ended some day tells the peer nothing, nor us.
  frame <- frame[!(is.na(frame$lower) & is.na(frame$upper)), ]
  seconds <- numeric(0)
  for (i in 1:as.integer(a[3])) {
    gc()
    t <- system.time(f <- survreg(Surv(lower, upper, type = "interval2") ~ coldDepot + partB + axle + heat + load,
      data = frame, dist = "weibull"))
    seconds <- c(seconds, t[["elapsed"]])
  }
  cat(sprintf("%s, survival %s: survreg, intervals without entry: median %.2f s (%s); log L %.4f; %s\n", R.version.string,
    packageVersion("survival"), median(seconds), paste(sprintf("%.2f", seconds), collapse = " "), f$loglik[2],
    paste(sprintf("%.6f", c(coef(f), -log(f$scale))), collapse = " ")))
}

curve <- function() {
  g <- columns(a[2], 3)
  lower <- ifelse(g[, 1] == 0, NA, g[, 1])
  upper <- ifelse(is.infinite(g[, 2]), NA, g[, 2])
  keep <- !(is.na(lower) & is.na(upper))
  seconds <- numeric(0)
  for (i in 1:3) {
    t <- system.time(s <- survfit(Surv(lower, upper, type = "interval2") ~ 1, weights = w,
      data = data.frame(lower, upper, w = g[, 3])[keep, ]))
    seconds <- c(seconds, t[["elapsed"]])
  }
  p <- c(1, s$surv)
  t <- c(0, s$time)
  S <- function(x) p[findInterval(x, t)]
  L <- sum(g[keep, 3] * log(S(ifelse(is.na(lower), 0, lower)[keep]) - ifelse(is.na(upper), 0, S(upper))[keep]))
  cat(sprintf("survfit, weekly grid without entry, distinct lives with weights: median %.2f s (%s); log L of its answer %.6f\n",
    median(seconds), paste(sprintf("%.2f", seconds), collapse = " "), L))
}

if (a[1] == "lives") regression() else curve()
