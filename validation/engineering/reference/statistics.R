# Writes statistics.json: exact limits, tolerance factors, tests and charts by R (base packages only).
# Run once: Rscript statistics.R > statistics.json
out <- c()
add <- function(id, calculation, inputs, expected) {
  out <<- c(out, sprintf('{"id":"%s","calculation":"%s","inputs":%s,"expected":%s}', id, calculation, inputs, expected))
}
num <- function(x) format(x, digits = 15, scientific = TRUE)
for (xn in list(c(0, 12), c(2, 7), c(7, 40), c(19, 20), c(40, 1000))) for (conf in c(0.9, 0.95, 0.99)) {
  ci <- binom.test(xn[1], xn[2], conf.level = conf)$conf.int
  up <- binom.test(xn[1], xn[2], conf.level = conf, alternative = "less")$conf.int[2]
  add(sprintf("binom.test %d of %d at %g", xn[1], xn[2], conf), "proportion-limits",
      sprintf('{"positives":%d,"tested":%d,"confidence_pct":%g}', xn[1], xn[2], 100 * conf),
      sprintf('{"low":%s,"high":%s,"upper":%s}', num(ci[1]), num(ci[2]), num(up)))
}
for (x in c(0, 2, 17, 250)) for (conf in c(0.9, 0.95, 0.99)) {
  ci <- poisson.test(x, conf.level = conf)$conf.int
  add(sprintf("poisson.test %d at %g", x, conf), "poisson-limits",
      sprintf('{"count":%d,"confidence_pct":%g}', x, 100 * conf), sprintf('{"low":%s,"high":%s}', num(ci[1]), num(ci[2])))
}
# One-sided tolerance factor from the noncentral t distribution.
for (n in c(5, 12, 30)) for (p in c(0.9, 0.95, 0.99)) for (g in c(0.9, 0.95))
  add(sprintf("qt noncentral n=%d p=%g c=%g", n, p, g), "tolerance-factor",
      sprintf('{"count":%d,"coverage_pct":%g,"confidence_pct":%g}', n, 100 * p, 100 * g),
      sprintf('{"oneSided":%s}', num(qt(g, n - 1, qnorm(p) * sqrt(n)) / sqrt(n))))
for (t in list(c(1, 20, 8, 20), c(0, 30, 5, 25), c(12, 40, 11, 38))) {
  m <- matrix(c(t[1], t[2] - t[1], t[3], t[4] - t[3]), 2)
  add(sprintf("fisher.test %d/%d against %d/%d", t[1], t[2], t[3], t[4]), "compare-two-rates",
      sprintf('{"positivesA":%d,"testedA":%d,"positivesB":%d,"testedB":%d}', t[1], t[2], t[3], t[4]),
      sprintf('{"twoSided":%s,"aBelow":%s}', num(fisher.test(m)$p.value), num(fisher.test(m, alternative = "less")$p.value)))
}
for (n in c(2, 3, 4, 5, 8, 10)) {
  up <- integrate(function(w) 1 - ptukey(w, n, Inf), 0, Inf, rel.tol = 1e-9)$value
  sq <- integrate(function(w) 2 * w * (1 - ptukey(w, n, Inf)), 0, Inf, rel.tol = 1e-9)$value
  add(sprintf("ptukey range n=%d", n), "chart-constants", sprintf('{"size":%d}', n),
      sprintf('{"d2":%s,"d3":%s}', num(up), num(sqrt(sq - up^2))))
}
for (a in list(c(50, 1, 2, 8), c(200, 5, 1, 6)))
  add(sprintf("pbinom n=%d c=%d", a[1], a[2]), "acceptance-plan",
      sprintf('{"sample":%d,"accept":%d,"good_pct":%g,"bad_pct":%g}', a[1], a[2], a[3], a[4]),
      sprintf('{"passGood":%s,"passBad":%s}', num(pbinom(a[2], a[1], a[3] / 100)), num(pbinom(a[2], a[1], a[4] / 100))))
cat("[\n", paste(out, collapse = ",\n"), "\n]\n")
