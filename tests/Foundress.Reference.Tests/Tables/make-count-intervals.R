# Makes count-intervals.tsv: limits in mites per bee by R's own tests. Run: Rscript make-count-intervals.R > count-intervals.tsv
options(digits = 17, warn = -1)
cat("# exact Poisson (poisson.test), Wilson (prop.test, correct = FALSE) and Clopper-Pearson (binom.test) limits per bee\n")
cat("# made by make-count-intervals.R with", R.version.string, "\n")
cat("mites\tbees\tconfidence\tpoissonLower\tpoissonUpper\twilsonLower\twilsonUpper\tclopperLower\tclopperUpper\n")
g <- function(x) formatC(x, digits = 17, format = "g")
row <- function(y, n, level) {
  p <- poisson.test(y, T = n, conf.level = level)$conf.int
  w <- b <- c(NA_real_, NA_real_)
  if (y <= n) {
    w <- prop.test(y, n, conf.level = level, correct = FALSE)$conf.int
    b <- binom.test(y, n, conf.level = level)$conf.int
  }
  cat(y, n, level, g(p[1]), g(p[2]), g(w[1]), g(w[2]), g(b[1]), g(b[2]), sep = "\t"); cat("\n")
}
for (n in c(1, 35, 100, 299, 320, 523, 900, 2400))
  for (y in c(0, 1, 2, 3, 6, 9, 14, 15, 20, 30, 45, 75, 120, 250, 400))
    for (level in c(0.5, 0.8, 0.9, 0.95, 0.99, 0.999))
      row(y, n, level)
for (y in c(9, 14, 43, 299, 300, 310)) for (n in c(300, 310)) row(y, n, 0.95)
