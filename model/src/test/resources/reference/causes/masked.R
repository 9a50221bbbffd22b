# Makes masked.json: lives whose cause of failure is partly unknown. The likelihood is written from its definition (closed form for
# exact ages, integrate() for intervals) and shares no code with the project. Run: Rscript masked.R > masked.json
options(digits = 15)
num <- function(x) paste0("[", paste(ifelse(is.na(x), "null", sprintf("%.15g", x)), collapse = ", "), "]")
words <- function(x) paste0("[", paste0('"', x, '"', collapse = ", "), "]")
H <- function(t, m, k) exp(k * (log(t) - m))
h <- function(t, m, k) k / t * H(t, m, k)
# par: log scale, log shape of each cause in turn
total <- function(t, par) { s <- 0; for (j in seq(1, length(par), 2)) s <- s + H(t, par[j], exp(par[j + 1])); s }
hazard <- function(t, par, causes) { s <- 0; for (j in causes) s <- s + h(t, par[2 * j - 1], exp(par[2 * j])); s }
loglik <- function(par, d) {
  sum(sapply(seq_len(nrow(d)), function(i) {
    causes <- as.integer(strsplit(d$causes[i], "")[[1]])
    base <- if (d$entry[i] > 0) total(d$entry[i], par) else 0
    low <- if (d$lower[i] > 0) total(d$lower[i], par) else 0
    if (is.infinite(d$upper[i])) return(base - low)
    if (d$upper[i] == d$lower[i]) return(base - low + log(hazard(d$lower[i], par, causes)))
    f <- function(t) hazard(t, par, causes) * exp(low - total(t, par))
    g <- function(x) f(exp(x)) * exp(x)   # in log age: smooth down to age 0
    from <- if (d$lower[i] > 0) log(d$lower[i]) else log(d$upper[i]) - 60
    cuts <- seq(from, log(d$upper[i]), length.out = if (d$lower[i] > 0) 3 else 31)
    base - low + log(sum(sapply(seq_len(length(cuts) - 1), function(q)
      integrate(g, cuts[q], cuts[q + 1], rel.tol = 1e-13, abs.tol = 0, subdivisions = 2000)$value)))
  }))
}
maximum <- function(start, d) {
  f <- function(p) { v <- tryCatch(-loglik(p, d), error = function(e) Inf); if (is.finite(v)) v else 1e6 }
  o <- optim(start, f, method = "BFGS", control = list(reltol = 1e-15, maxit = 2000))
  o <- nlm(f, o$par, gradtol = 1e-10, steptol = 1e-12, iterlim = 500)
  v <- solve(optimHess(o$estimate, f, control = list(ndeps = rep(1e-4, length(start)))))
  list(par = o$estimate, se = sqrt(diag(v)), logLikelihood = -o$minimum)
}
# Vehicle shock absorbers (O'Connor 1985; Meeker and Escobar 1998, appendix C table C.2), as in the reference case par-shockabsorber.
shock <- data.frame(time = c(6700, 6950, 7820, 8790, 9120, 9660, 9820, 11310, 11690, 11850, 11880, 12140, 12200, 12870, 13150, 13330,
  13470, 14040, 14300, 17520, 17540, 17890, 18450, 18960, 18980, 19410, 20100, 20100, 20150, 20320, 20900, 22700, 23490, 26510, 27410,
  27490, 27890, 28100),
  mode = c(1, 0, 0, 0, 2, 0, 0, 0, 0, 0, 0, 0, 1, 0, 2, 0, 0, 0, 1, 1, 0, 0, 0, 0, 0, 0, 2, 0, 0, 0, 2, 1, 0, 1, 0, 1, 0, 0))
known <- with(shock, data.frame(entry = 0, lower = time, upper = ifelse(mode == 0, Inf, time), causes = ifelse(mode == 0, "", mode)))
hidden <- known
failures <- which(known$causes != "")
hidden$causes[failures[c(3, 6, 9)]] <- "12"
# Invented: three causes, intervals from rounds, delayed entry, one exact age, causes missing or narrowed to two.
set.seed(1995)
n <- 60
entry <- ifelse(seq_len(n) %% 3 == 0, round(900 * runif(n)), 0)
life <- matrix(NA, n, 3)
life[, 1] <- 2500 * rexp(n)^(1 / 3); life[, 2] <- 6000 * rexp(n); life[, 3] <- 9000 * rexp(n)^(1 / .8)
age <- apply(life, 1, min); cause <- apply(life, 1, which.min)
keep <- age > entry
rounds <- data.frame()
for (i in which(keep)) {
  visits <- round(entry[i] + cumsum(runif(6, 150, 500)))
  low <- max(c(entry[i], visits[visits < age[i]])); up <- min(c(Inf, visits[visits >= age[i]]))
  set <- as.character(cause[i]); u <- runif(1)
  if (u < .25) set <- "123" else if (u < .4) set <- paste(sort(unique(c(cause[i], cause[i] %% 3 + 1))), collapse = "")
  rounds <- rbind(rounds, data.frame(entry = entry[i], lower = low, upper = up, causes = if (is.infinite(up)) "" else set))
}
one <- which(is.finite(rounds$upper))[5]
rounds$lower[one] <- rounds$upper[one]
case <- function(id, source, d, points, m, last) {
  cat('  {"id": "', id, '", "source": "', source, '", "tolerance": {"rel": 1e-10, "abs": 1e-12},\n', sep = "")
  cat('   "data": {"inline": {"entry": ', num(d$entry), ',\n    "lower": ', num(d$lower), ',\n    "upper": ', num(ifelse(is.finite(d$upper), d$upper, NA)),
    ',\n    "causes": ', words(d$causes), '}},\n', sep = "")
  cat('   "expected": {"points": ', num(unlist(points)), ', "logLikelihoods": ', num(sapply(points, loglik, d)), ',\n', sep = "")
  cat('    "par": ', num(m$par), ', "se": ', num(m$se), ', "logLikelihood": ', sprintf("%.15g", m$logLikelihood), '}}', if (last) "\n" else ",\n", sep = "")
}
start <- c(log(30000), log(2), log(30000), log(2))
two <- list(start, c(log(25000), log(4), log(40000), log(1.2)))
three <- list(c(log(2500), log(3), log(6000), 0, log(9000), log(.8)), c(log(2000), log(1.5), log(3000), log(2), log(5000), log(.6)))
cat('{\n "what": "Weibull hazards by cause, causes partly unknown",\n "computed": "masked.R in this folder, ', R.version.string, '",\n "checks": [\n', sep = "")
case("shock-known", "shock absorbers: O'Connor (1985); Meeker and Escobar (1998), all modes known", known, two, maximum(start, known), FALSE)
case("shock-masked", "shock absorbers with the modes of three failures struck out by us", hidden, two, maximum(start, hidden), FALSE)
case("rounds-masked", "invented; no published case with intervals, entry and unknown causes is known to us", rounds, three, maximum(three[[1]], rounds), TRUE)
cat(' ]\n}\n')
