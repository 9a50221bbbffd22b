# Device-G: thousands of cycles to failure of 30 devices, S by surges, W worn out, "-" running at 300. Meeker and Escobar (1998),
# Statistical Methods for Reliability Data, ch. 15; data and printed figures from memory: S 6.11, 1.49, log-likelihood -101.36;
# W 5.83, .23, -47.16; causes left aside -142.62. Writes the expected values of two-hazards.json.
library(survival)
options(digits = 12)
t <- c(275,13,147,23,181,30,65,10,300,173,106,300,300,212,300,300,300,2,261,293,88,247,28,143,300,23,300,80,245,266)
m <- c("W","S","W","S","W","S","S","S","-","S","S","-","-","W","-","-","-","S","S","W","S","S","S","S","-","S","-","S","W","W")
failed <- m != "-"
for (cause in c("S", "W")) {
  fit <- survreg(Surv(t, m == cause) ~ 1, control = list(rel.tolerance = 1e-12))
  cat(cause, "shape, scale, log-likelihood:", 1 / fit$scale, exp(coef(fit)), fit$loglik[1], "\n")
}
lost <- function(p, free) {
  q <- if (free) p else c(p[1], 0, p[2:3])
  s <- exp(q)
  h <- s[2] / s[1] * (t / s[1])^(s[2] - 1) + s[4] / s[3] * (t / s[3])^(s[4] - 1)
  value <- -sum(log(h)[failed]) + sum((t / s[1])^s[2] + (t / s[3])^s[4])
  if (is.finite(value)) value else 1e10
}
for (free in c(FALSE, TRUE)) for (shape in c(2, 4, 8, 20)) {
  start <- log(if (free) c(300, .5, 300, shape) else c(300, 300, shape))
  near <- optim(start, lost, free = free, control = list(maxit = 20000, reltol = 1e-16))
  fit <- nlm(lost, near$par, free = free, gradtol = 1e-10, steptol = 1e-12)
  curvature <- optimHess(fit$estimate, lost, free = free, control = list(ndeps = rep(1e-4, length(start))))
  cat(if (free) "free" else "constant", "from", shape, "log-likelihood", -fit$minimum, "values", exp(fit$estimate),
      "errors of logs", sqrt(diag(solve(curvature))), "\n")
}
