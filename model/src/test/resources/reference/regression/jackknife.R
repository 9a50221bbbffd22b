# Jackknife errors by cluster of a Weibull regression: one Newton step, by R's own derivatives, for each patient left out, and a new
# fit where that step, squared and in errors of the information, is longer than 4.
# R 4.2.2, survival 3.5-3: Rscript jackknife.R > jackknife.json
library(survival)
fit <- survreg(Surv(time, status) ~ age + sex, kidney, control = survreg.control(rel.tolerance = 1e-14, iter.max = 200))
d <- residuals(fit, type = "matrix")  # g dg ddg ds dds dsg: by the linear predictor and by log(1 / shape)
x <- model.matrix(fit)
p <- ncol(x) + 1
score <- cbind(d[, "dg"] * x, d[, "ds"])
part <- function(rows) {
  h <- matrix(0, p, p)
  for (i in rows) {
    u <- x[i, ]
    h <- h - rbind(cbind(d[i, "ddg"] * u %o% u, d[i, "dsg"] * u), c(d[i, "dsg"] * u, d[i, "dds"]))
  }
  h
}
all <- part(seq_len(nrow(x)))
stopifnot(max(abs(solve(all) / vcov(fit) - 1)) < 1e-6)
far <- 0
ids <- unique(kidney$id)
variance <- matrix(0, p, p)
for (g in ids) {
  rows <- which(kidney$id == g)
  step <- solve(all - part(rows), colSums(score[rows, , drop = FALSE]))
  if (step %*% all %*% step > 4 || any(eigen(all - part(rows))$values <= 0)) {
    again <- update(fit, data = kidney[-rows, ])
    step <- c(coef(fit) - coef(again), log(fit$scale / again$scale))
    far <- far + 1
  }
  variance <- variance + step %o% step
}
variance <- variance * (length(ids) - 1) / length(ids)
# log shape is less the log of R's scale
turn <- diag(c(rep(1, p - 1), -1))
variance <- turn %*% variance %*% turn
numbers <- function(v) paste0("[", paste(formatC(v, digits = 12, format = "g"), collapse = ", "), "]")
column <- function(name) paste0('      "', name, '": [', paste(kidney[[name]], collapse = ", "), "]")
cat('{\n  "source": "McGilchrist and Aisbett (1991), Biometrics 47:461; data kidney of R package survival 3.5-3",\n')
cat('  "command": "Rscript jackknife.R (R 4.2.2)",\n  "data": {\n')
cat(paste(sapply(c("id", "time", "status", "age", "sex"), column), collapse = ",\n"), "\n  },\n")
cat('  "patientsFittedAnew":', far, ",\n")
cat('  "coefficients":', numbers(c(coef(fit), -log(fit$scale))), ",\n")
cat('  "errors":', numbers(sqrt(diag(variance))), ",\n")
half <- qt(.975, length(ids) - 1) * sqrt(diag(variance))
cat('  "lower":', numbers(c(coef(fit), -log(fit$scale)) - half), ",\n")
cat('  "upper":', numbers(c(coef(fit), -log(fit$scale)) + half), ",\n")
cat('  "covariance": [', paste(apply(variance, 1, numbers), collapse = ", "), "]\n}\n")
