# Makes efficacy.tsv and reduction-tests.tsv. Run: Rscript make-efficacy.R (writes into the working folder)
made <- paste0("# made by make-efficacy.R with ", R.version.string)
f <- function(x) sprintf("%.17g", x)

out <- file("efficacy.tsv", "w")
writeLines(c("# efficacy of one colony, 1 - (n0/n1)((y1+1/2)/(y0+1/2)) F(2 y1 + 1, 2 y0 + 1): limits of intervals by qf, chance of at least 0.9 by pf", made,
             "before\tbeesBefore\tafter\tbeesAfter\tconfidence\tlower\tupper\tchance90"), out)
for (y0 in c(1, 4, 12, 30, 90, 400)) for (y1 in c(0, 1, 3, 10, 60)) for (n in list(c(300, 300), c(320, 281), c(150, 450))) for (level in c(0.8, 0.9, 0.95)) {
  k <- n[1] / n[2] * (y1 + 0.5) / (y0 + 0.5)
  q <- qf(c((1 - level) / 2, (1 + level) / 2), 2 * y1 + 1, 2 * y0 + 1)
  writeLines(paste(y0, n[1], y1, n[2], level, f(1 - k * q[2]), f(1 - k * q[1]), f(pf(0.1 / k, 2 * y1 + 1, 2 * y0 + 1)), sep = "\t"), out)
}
close(out)

# Two published sets of counts: A, the worked example of an egg count reduction package; B, the sample of another.
sets <- list(
  A = list(before = c(14, 22, 7, 29, 11, 1, 39, 6, 3, 0), after = c(0, 2, 1, 1, 2, 0, 5, 2, 0, 3)),
  B = list(before = c(0, 3500, 400, 150, 0, 0, 0, 200, 0, 400, 0, 2000, 2900, 9300), after = c(0, 200, 0, 50, 300, 0, 0, 0, 0, 0, 0, 0, 100, 800)))
out <- file("reduction-tests.tsv", "w")
writeLines(c("# intervals of the reduction: delta variance with gamma (qgamma) and Student limits (qt), Coles' logarithms, Dobson's binomial (qbeta)", made,
             "set\tmethod\tconfidence\tlower\tupper"), out)
for (name in names(sets)) for (level in c(0.9, 0.95)) {
  b <- sets[[name]]$before; a <- sets[[name]]$after; n <- length(b); r <- mean(a) / mean(b); t <- (1 - level) / 2
  apart <- var(b) / (n * mean(b)^2) + var(a) / (n * mean(a)^2)
  paired <- apart - 2 * cov(b, a) / (n * mean(b) * mean(a))
  write1 <- function(method, limits) writeLines(paste(name, method, level, f(limits[1]), f(limits[2]), sep = "\t"), out)
  gamma1 <- function(v) 1 - qgamma(c(1 - t, t), shape = 1 / v, scale = r * v)
  write1("gamma-paired", gamma1(paired))
  write1("gamma-unpaired", gamma1(apart))
  write1("normal-paired", 1 - r + c(-1, 1) * qt(1 - t, 2 * n - 2) * r * sqrt(paired))
  write1("coles-unpaired", 1 - r * exp(c(1, -1) * qt(1 - t, 2 * n - 2) * sqrt(apart)))
  write1("coles-paired", 1 - r * exp(c(1, -1) * qt(1 - t, n - 1) * sqrt(paired)))
  write1("binomial", 1 - qbeta(c(1 - t, t), sum(a) + 1, sum(b) - sum(a) + 1))
}
close(out)
