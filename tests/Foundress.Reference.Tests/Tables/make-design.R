# Makes student.tsv, detection.tsv, detection-sizes.tsv, decision.tsv and calibration.tsv. Run: Rscript make-design.R (writes into the working folder)
suppressMessages(library(epiR))
made <- paste0("# made by make-design.R with ", R.version.string, ", epiR ", packageVersion("epiR"))
f <- function(x) sprintf("%.17g", x)

out <- file("student.tsv", "w")
writeLines(c("# Student's t: lower tail by pt, quantile of that tail by qt", made, "t\tfreedom\tlower\tp\tquantile"), out)
for (v in c(0.7, 1, 2.5, 4, 9, 37, 400)) for (t in c(-40, -6, -2.2, -0.7, -0.01, 0, 0.3, 1.1, 3, 12)) {
  p <- min(max(round(pt(t, v), 6), 1e-6), 1 - 1e-6)
  writeLines(paste(f(t), f(v), f(pt(t, v)), f(p), f(qt(p, v)), sep = "\t"), out)
}
close(out)

out <- file("detection.tsv", "w")
writeLines(c("# chance that a sample holds at least one colony over the line: phyper; with a jar that reads over with a given chance: sum of dhyper",
             "# approximate: epiR rsu.sep.rs, 1 - (1 - se n / N)^d", made, "colonies\tover\ttake\tsensitivity\tchance\tapproximate"), out)
for (N in c(6, 15, 40, 120)) for (d in c(1, 2, 5)) for (n in c(1, 3, 5, 8, 12, 40)) if (n <= N) for (se in c(1, 0.8, 0.35)) {
  x <- 0:n
  exact <- if (se == 1) phyper(0, d, N - d, n, lower.tail = FALSE) else 1 - sum(dhyper(x, d, N - d, n) * (1 - se)^x)
  writeLines(paste(N, d, n, f(se), f(exact), f(rsu.sep.rs(N = N, n = n, pstar = d, se.u = se)), sep = "\t"), out)
}
close(out)

out <- file("detection-sizes.tsv", "w")
writeLines(c("# fewest colonies for a chance of catching one over the line: search by phyper; approximate sizes of epiR rsu.sssep.rs and epi.ssdetect (hypergeo)",
             made, "colonies\tover\tchance\ttake\trsu\tssdetect"), out)
for (N in c(10, 40, 60, 200, 1000)) for (d in c(1, 2, 5, 9)) for (p in c(0.5, 0.8, 0.95, 0.99)) {
  n <- which(phyper(0, d, N - d, 1:N, lower.tail = FALSE) >= p - 1e-14)[1]
  ss <- epi.ssdetect(N = N, prev = (d - 0.5) / N, se = 1, sp = 1, finite.correction = TRUE, conf.level = p)$sample.size[["hypergeo"]]
  rs <- rsu.sssep.rs(N = N, pstar = (d - 0.5) / N, se.p = p)
  writeLines(paste(N, d, f(p), n, rs, ss, sep = "\t"), out)
}
close(out)

out <- file("decision.tsv", "w")
writeLines(c("# chance of more mites than the line allows on c colonies: pnbinom(floor(line), size = c k, mu), large apiary; whole: every colony sampled, ppois",
             made, "take\tbees\tlevel\tshape\tline\tover\twhole"), out)
for (c in c(1, 3, 8, 12, 40)) for (level in c(0.5, 1, 2, 3, 5, 9)) for (k in c(0.3, 1, 5)) for (line in c(1, 3)) {
  n <- c * 300; most <- floor(n * line / 100 + 1e-9)
  writeLines(paste(c, 300, f(level), f(k), f(line), f(pnbinom(most, size = c * k, mu = n * level / 100, lower.tail = FALSE)),
                   f(ppois(most, n * level / 100, lower.tail = FALSE)), sep = "\t"), out)
}
close(out)

# Posterior of jars by brute force: the same prior on a dense grid of mean and ln variance, not the closed form.
out <- file("calibration.tsv", "w")
writeLines(c("# bees per jar: prior (bees, log spread, jars for mean, jars for spread), counted jars; chances by summing prior times likelihood over a 1601 x 1601 grid:",
             "# usual jar at most 310, log spread at most 0.14, next jar at most 280", made,
             "bees\tlogSpread\tjarsForMean\tjarsForSpread\tcounted\tusualAtMost310\tspreadAtMost014\tnextAtMost280"), out)
for (jars in list(c(322, 290, 341), c(255, 262, 270, 249, 300, 281, 266), c(410, 180), 300)) for (pr in list(c(300, 0.15, 1, 4), c(320, 0.2, 0.5, 3))) {
  x <- log(jars); m <- seq(log(60), log(1500), length.out = 1601); lv <- seq(log(0.01^2), log(6^2), length.out = 1601); v <- exp(lv)
  a <- pr[4] / 2; b <- a * pr[2]^2
  lp <- outer(m, v, function(m, v) {
    r <- dnorm(m, log(pr[1]), sqrt(v / pr[3]), log = TRUE) + (-(a + 1) * log(v) - b / v) + log(v)
    for (xi in x) r <- r + dnorm(xi, m, sqrt(v), log = TRUE)
    r })
  w <- exp(lp - max(lp)); w <- w / sum(w)
  half <- function(grid, at) { h <- grid[2] - grid[1]; pmin(pmax((at - grid) / h + 0.5, 0), 1) }  # part of a cell below the point
  usual <- sum(rowSums(w) * half(m, log(310))); spread <- sum(colSums(w) * half(lv, log(0.14^2)))
  nxt <- sum(w * outer(m, v, function(m, v) pnorm(log(280), m, sqrt(v))))
  writeLines(paste(pr[1], f(pr[2]), f(pr[3]), f(pr[4]), paste(jars, collapse = ","), f(usual), f(spread), f(nxt), sep = "\t"), out)
}
close(out)
