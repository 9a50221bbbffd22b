# Mid-P gamma limits of survival, cumulative hazard and mean life under delayed entry, worked out from survfit and from sums over lives.
# R 4.2.2, survival 3.5-3: Rscript count-limits.R > count-limits.json
library(survival)
entry <- c(0, 0, 1, 2, 2, 3, 4, 4, 5, 6, 6, 7)
exit <- c(3, 9, 6, 5, 11, 8, 7, 12, 12, 10, 14, 13)
failed <- c(1, 0, 1, 0, 1, 1, 0, 1, 0, 1, 0, 0)
fit <- survfit(Surv(entry, exit, failed) ~ 1, timefix = FALSE)
p <- c(.025, .975)
# Fay and Kim (2017): half the gamma law of what was counted, half that with an event more
limits <- function(y, v, e, e2) sapply(p, function(q) {
  below <- function(x) (if (y > 0) pgamma(x, y^2 / v, y / v) else 1) / 2 + pgamma(x, (y + e)^2 / (v + e2), (y + e) / (v + e2)) / 2 - q
  if (below(1e-12) >= 0) 0 else uniroot(below, c(1e-12, 100), tol = 1e-14)$root
})
watched <- function(a) sum(entry < a & a <= exit)
ends <- sort(unique(c(entry, exit)))
# Sum over stretches (between ages at which the number watched changes) of from (a, b] of f(Y, a, b)
over <- function(from, to, f) {
  cuts <- sort(unique(c(from, ends[ends > from & ends < to], to)))
  sum(sapply(seq_along(cuts)[-1], function(i) f(watched(cuts[i]), cuts[i - 1], cuts[i])))
}
S <- function(a) { i <- sum(fit$time <= a); if (i == 0) 1 else fit$surv[i] }
area <- function(a, b) { x <- sort(unique(c(a, fit$time[fit$time > a & fit$time < b], b))); sum(diff(x) * sapply(x[-length(x)], S)) }
event <- fit$n.event > 0
steps <- t(sapply(which(event), function(i) {
  a <- fit$time[i]
  exposure <- over(0, a, function(y, from, to) y * (to - from))
  e <- a / exposure
  e2 <- over(0, a, function(y, from, to) (to - from) / y) / exposure
  k <- seq_len(i)
  h <- limits(sum(fit$n.event[k] / fit$n.risk[k]), sum(fit$n.event[k] / fit$n.risk[k]^2), e, e2)
  s <- limits(-log(fit$surv[i]), sum(fit$n.event[k] / (fit$n.risk[k] * (fit$n.risk[k] - fit$n.event[k]))), e, e2)
  c(a, exp(-s[2]), exp(-s[1]), h)
}))
mean_limits <- function(from, to) {
  alive <- S(from)
  beyond <- function(a) sapply(a, function(x) area(x, to)) / alive
  k <- which(event & fit$time > from & fit$time < to)
  v <- sum(beyond(fit$time[k])^2 * fit$n.event[k] / (fit$n.risk[k] * (fit$n.risk[k] - fit$n.event[k])))
  exposure <- over(from, to, function(y, a, b) y * (b - a))
  e <- over(from, to, function(y, a, b) integrate(beyond, a, b, rel.tol = 1e-12)$value) / exposure
  e2 <- over(from, to, function(y, a, b) integrate(function(x) beyond(x)^2, a, b, rel.tol = 1e-12)$value / y) / exposure
  mean <- area(from, to) / alive
  c(mean, (to - from) - rev(limits(to - from - mean, v, e, e2)))
}
before <- fit$time[event][1]
e <- before / over(0, before, function(y, a, b) y * (b - a))
e2 <- over(0, before, function(y, a, b) (b - a) / y) / over(0, before, function(y, a, b) y * (b - a))
numbers <- function(v) paste0("[", paste(formatC(v, digits = 12, format = "g"), collapse = ", "), "]")
cat('{\n  "what": "mid-P gamma limits; lives invented",\n  "command": "Rscript count-limits.R (R 4.2.2, survival 3.5-3)",\n')
cat('  "entry":', numbers(entry), ',\n  "exit":', numbers(exit), ',\n  "failed":', numbers(failed), ',\n')
cat('  "age":', numbers(steps[, 1]), ',\n  "lower":', numbers(steps[, 2]), ',\n  "upper":', numbers(steps[, 3]), ',\n')
cat('  "hazardLower":', numbers(steps[, 4]), ',\n  "hazardUpper":', numbers(steps[, 5]), ',\n')
cat('  "lowerBeforeFailures":', formatC(exp(-limits(0, 0, e, e2)[2]), digits = 12, format = "g"), ',\n')
cat('  "meanWithin12":', numbers(mean_limits(0, 12)), ',\n  "meanFrom5To12":', numbers(mean_limits(5, 12)), '\n}\n')
