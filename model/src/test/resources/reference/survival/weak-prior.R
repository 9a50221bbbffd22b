# Makes weak-prior.json: posterior of a Weibull law under independent normal priors on log median life and log shape, by a fine grid
# of its own. Run: Rscript weak-prior.R > weak-prior.json
# Bearing cages: 1703 units, 6 failures, the rest running; Abernethy et al. (1983), Weibull Analysis Handbook; Meeker and Escobar
# (1998), appendix C (counts from memory; they add to 1703 and give the printed fit 2.035, 11792).
run <- c(50, 150, 250, 350, 450, 550, 650, 750, 850, 950, 1050, 1150, 1250, 1350, 1450, 1550, 1650, 1850, 2050)
n <- c(288, 148, 124, 111, 106, 99, 110, 114, 119, 127, 123, 93, 47, 41, 27, 11, 6, 1, 2)
fail <- c(230, 334, 423, 990, 1009, 1510)
stopifnot(sum(n) + length(fail) == 1703)
loglik <- function(m, k) sum(log(k) + k * (log(fail) - m) - log(fail) - exp(k * (log(fail) - m))) - sum(n * exp(k * (log(run) - m)))
o <- optim(c(9.4, .7), function(p) -loglik(p[1], exp(p[2])), control = list(reltol = 1e-15, maxit = 5000))
o <- optim(o$par, function(p) -loglik(p[1], exp(p[2])), method = "BFGS", control = list(reltol = 1e-15))
low <- 2000; high <- 40000; klow <- 1; khigh <- 5; z <- qnorm(.975)
mu <- log(low * high) / 2; sd <- log(high / low) / 2 / z; kmu <- log(klow * khigh) / 2; ksd <- log(khigh / klow) / 2 / z
med <- seq(mu - 7 * sd, mu + 7 * sd, length.out = 1501); lk <- seq(kmu - 7 * ksd, kmu + 7 * ksd, length.out = 1501)
L <- outer(med, lk, Vectorize(function(a, b) loglik(a - log(log(2)) * exp(-b), exp(b)))) +
  outer(dnorm(med, mu, sd, log = TRUE), dnorm(lk, kmu, ksd, log = TRUE), "+")
W <- exp(L - max(L)); W <- W / sum(W)
q <- function(v) { o <- order(v); c <- cumsum(W[o]) - W[o] / 2; approx(c, v[o], c(.5, .025, .975), ties = "ordered")$y }
M <- matrix(med, 1501, 1501); K <- exp(matrix(lk, 1501, 1501, byrow = TRUE)); m <- M - log(log(2)) / K
H <- function(t) exp(K * (log(t) - m))
num <- function(x) paste0("[", paste(sprintf("%.12g", x), collapse = ", "), "]")
cat('{\n "what": "Weibull law with a weak prior", "computed": "weak-prior.R in this folder, ', R.version.string, '",\n "checks": [\n', sep = "")
cat('  {"id": "bearing-cage", "source": "Abernethy et al. (1983), Weibull Analysis Handbook; Meeker and Escobar (1998), appendix C; data and printed fit from memory",\n')
cat('   "tolerance": {"rel": 5e-3, "abs": 1e-4},\n   "data": {"inline": {"running": ', num(run), ', "count": ', num(n), ', "failed": ', num(fail), '}},\n', sep = "")
cat('   "printed": {"shape": 2.035, "scale": 11792},\n   "prior": {"medianLife": [2000, 40000], "shape": [1, 5]},\n', sep = "")
cat('   "expected": {"mle": ', num(c(exp(o$par[1]), exp(o$par[2]))), ', "shape": ', num(q(K)), ', "medianLife": ', num(q(exp(M))), ',\n', sep = "")
cat('    "tenPercent": ', num(q(exp(m + log(-log(.9)) / K))), ', "survival8000": ', num(q(exp(-H(8000)))), ', "within300at2000": ', num(q(1 - exp(H(2000) - H(2300)))), ',\n', sep = "")
ms <- sum(W * m); ml <- sum(W * log(K))
cat('    "moments": ', num(c(ms, ml, sum(W * (m - ms)^2), sum(W * (log(K) - ml)^2), sum(W * (m - ms) * (log(K) - ml)))), '}}\n ]\n}\n', sep = "")
