# Reference values for the frailty tests: Rscript frailty.R > frailty.json (R with package survival).
# The likelihood is written here from the definition: closed form for exact and right-censored lives, integrate() over
# the gamma density where failures are known to intervals; optim() and nlminb() for the maximum. No code in common.
suppressMessages(library(survival))
num <- function(x) paste0("[", paste(ifelse(is.finite(x), sprintf("%.15g", x), "null"), collapse = ", "), "]")
H <- function(t, m, k) ifelse(t > 0, (t / exp(m))^k, 0)

exactFleet <- function(par, d, X, weibull) {
  p <- ncol(X); m <- drop(X %*% par[1:p]); k <- if (weibull) exp(par[p + 1]) else 1
  theta <- exp(par[length(par)]); a <- 1 / theta; total <- 0
  for (id in unique(d$id)) {
    i <- d$id == id; D <- sum(d$status[i]); A <- sum(H(d$time[i], m[i], k))
    logh <- log(k) + (k - 1) * log(d$time[i]) - k * m[i]
    total <- total + sum(d$status[i] * logh) + lgamma(a + D) - lgamma(a) + a * log(a) - (a + D) * log(a + A)
  }
  total
}
fit <- function(f, start) {
  neg <- function(p) -f(p)
  o <- list(par = start)
  for (i in 1:4) {
    o <- optim(o$par, neg, method = "Nelder-Mead", control = list(maxit = 5000, reltol = 1e-15))
    o <- optim(o$par, neg, method = "BFGS", control = list(maxit = 500, reltol = 1e-16, ndeps = rep(1e-5, length(start))))
  }
  h <- optimHess(o$par, neg, control = list(ndeps = rep(1e-4, length(start))))
  list(par = o$par, value = -o$value, se = sqrt(diag(solve(h))))
}

k <- survival::kidney
X <- cbind(1, k$sex - 1, k$age)
expo <- fit(function(p) exactFleet(p, k, X, FALSE), c(4, 1, 0, -1))
weib <- fit(function(p) exactFleet(p, k, X, TRUE), c(4, 1, 0, 0, -1))

# Invented: three sets with entries, intervals, an exact age and survivors; the last set has no failure.
s <- data.frame(id = c(1, 1, 1, 1, 2, 2, 2, 2, 3, 3, 4, 4, 4),
  entry = c(300, 300, 300, 300, 0, 0, 0, 900, 1200, 1200, 500, 500, 0),
  lower = c(1500, 1900, 2200, 2200, 800, 1000, 1490, 1700, 1900, 1250, 2500, 2500, 1000),
  upper = c(1800, 2200, Inf, Inf, 1000, 1010, 1490, Inf, 2600, Inf, Inf, Inf, Inf))
sets <- function(par) {
  m <- par[1]; kk <- exp(par[2]); a <- exp(-par[3]); total <- 0
  for (id in unique(s$id)) {
    i <- which(s$id == id)
    f <- function(w) sapply(w, function(w1) {
      v <- dgamma(w1, a, a)
      for (j in i) {
        l <- H(s$lower[j], m, kk)
        v <- v * if (s$lower[j] == s$upper[j]) w1 * kk * l / s$lower[j] * exp(-w1 * l)
          else if (is.finite(s$upper[j])) exp(-w1 * l) * -expm1(-w1 * (H(s$upper[j], m, kk) - l)) else exp(-w1 * l)
      }
      v
    })
    parts <- c(0, .1, .3, 1, 3, 10, Inf)
    I <- sum(sapply(1:6, function(q) integrate(f, parts[q], parts[q + 1], rel.tol = 1e-12, abs.tol = 0, subdivisions = 2000)$value))
    total <- total + log(I) + a * log1p(sum(H(s$entry[i], m, kk)) / a)
  }
  total
}
points <- list(c(log(2000), log(2.5), log(.5)), c(log(3000), log(1.2), log(2)), c(log(1500), log(4), log(.05)))
small <- fit(sets, c(7.6, 1, -1))

cat('{\n "what": "Shared gamma frailty over Weibull or exponential lives",\n')
cat(' "computed": "frailty.R in this folder, ', R.version.string, ', package survival ', as.character(packageVersion("survival")), '",\n', sep = "")
cat(' "checks": [\n  {"id": "frailty-kidney", "source": "McGilchrist and Aisbett (1991) Biometrics 47:461; R survival::kidney; printed exponential-gamma fit: Munda, Rotolo and Legrand (2012) J. Stat. Software 51(11), read in the later vignette",\n')
cat('   "tolerance": {"rel": 1e-5, "abs": 1e-6},\n   "data": {"inline": {"id": ', num(k$id), ',\n    "time": ', num(k$time), ',\n    "status": ', num(k$status), ',\n    "sex": ', num(k$sex), ',\n    "age": ', num(k$age), '}},\n', sep = "")
cat('   "printed": {"logLikelihood": -333.248, "variance": 0.301, "varianceError": 0.157, "rate": 0.025, "rateError": 0.015, "sex": -1.485, "sexError": 0.398, "age": 0.005, "ageError": 0.011, "tau": 0.131, "aicWeibull": 674, "bicWeibull": 686},\n')
for (n in c("exponential", "weibull")) {
  o <- if (n == "weibull") weib else expo
  cat('   "', n, '": {"par": ', num(o$par), ', "se": ', num(o$se), ', "logLikelihood": ', sprintf("%.15g", o$value), if (n == "weibull") '}},\n' else '},\n', sep = "")
}
cat('  {"id": "frailty-sets", "source": "invented; no published case with intervals and entry is known to us", "tolerance": {"rel": 1e-10, "abs": 1e-10},\n')
cat('   "data": {"inline": {"id": ', num(s$id), ', "entry": ', num(s$entry), ', "lower": ', num(s$lower), ', "upper": ', num(s$upper), '}},\n', sep = "")
cat('   "points": [', paste(sapply(points, num), collapse = ", "), '], "logLikelihoods": ', num(sapply(points, sets)), ',\n', sep = "")
cat('   "maximum": {"par": ', num(small$par), ', "se": ', num(small$se), ', "logLikelihood": ', sprintf("%.15g", small$value), '}}\n ]\n}\n', sep = "")
