# Makes negative-binomial.tsv, negative-binomial-fit.tsv and level-change.tsv. Run: Rscript make-clumped-counts.R (writes into the working folder)
suppressMessages(library(MASS))
made <- paste0("# made by make-clumped-counts.R with ", R.version.string, ", MASS ", packageVersion("MASS"))
set.seed(41)
f <- function(x) sprintf("%.17g", x)

out <- file("negative-binomial.tsv", "w")
writeLines(c("# ln mass of the negative binomial distribution (dnbinom, log = TRUE)", made, "mites\tmean\tshape\tlogMass"), out)
for (y in c(0, 1, 3, 14, 97, 400, 5000)) for (m in c(0.05, 0.6, 3, 9, 45, 400)) for (k in c(0.05, 0.3, 1, 5, 80, 1e4))
  writeLines(paste(y, f(m), f(k), f(dnbinom(y, size = k, mu = m, log = TRUE)), sep = "\t"), out)
close(out)

out <- file("negative-binomial-fit.tsv", "w")
writeLines(c("# maximum likelihood by MASS::glm.nb(mites ~ 1 + offset(log(bees))): mean per bee, theta, ln likelihood", made,
             "jars\tmean\ttheta\tlogLikelihood"), out)
for (C in c(4, 8, 20, 60)) for (k in c(0.3, 1, 5)) for (level in c(0.01, 0.04, 0.15)) {
  repeat {
    n <- sample(150:420, C, replace = TRUE)
    y <- rpois(C, n * rgamma(C, shape = k, rate = k / level))
    fit <- try(suppressWarnings(glm.nb(y ~ 1 + offset(log(n)), control = glm.control(epsilon = 1e-13, maxit = 500))), silent = TRUE)
    if (!inherits(fit, "try-error") && fit$converged && fit$theta < 40 && fit$theta > 0.05) break
  }
  mu <- exp(coef(fit)[[1]])
  writeLines(paste(paste(y, n, sep = ":", collapse = ","), f(mu), f(fit$theta), f(sum(dnbinom(y, size = fit$theta, mu = n * mu, log = TRUE))), sep = "\t"), out)
}
close(out)

out <- file("level-change.tsv", "w")
writeLines(c("# ratio of later to earlier level, (n0/n1)((y1+1/2)/(y0+1/2)) F(2 y1 + 1, 2 y0 + 1): quantiles by qf, chance over 1 by pf", made,
             "earlierMites\tearlierBees\tlaterMites\tlaterBees\tp\tquantile\tchanceOver1"), out)
for (j in list(c(10, 300, 3, 320), c(3, 300, 10, 300), c(0, 300, 0, 310), c(0, 280, 7, 300), c(60, 300, 1, 300), c(14, 320, 14, 320), c(400, 300, 380, 900)))
  for (p in c(0.005, 0.025, 0.1, 0.5, 0.9, 0.975, 0.995)) {
    factor <- (j[2] / j[4]) * ((j[3] + .5) / (j[1] + .5))
    writeLines(paste(j[1], j[2], j[3], j[4], f(p), f(factor * qf(p, 2 * j[3] + 1, 2 * j[1] + 1)),
                     f(pf(1 / factor, 2 * j[3] + 1, 2 * j[1] + 1, lower.tail = FALSE)), sep = "\t"), out)
  }
close(out)

# Own growth of colonies between controls: Poisson regression with a level for each stretch.
out <- file("growth.tsv", "w")
writeLines(c("# growth per day and its standard error by glm(mites ~ stretch + day + offset(log(bees)), family = poisson)", made,
             "stretches\tgrowth\tstandardError"), out)
for (i in 1:12) {
  g <- rnorm(1, 0.02, 0.01)
  day <- c(0, 21, 45, 70, 91, 120); stretch <- c(1, 1, 1, 2, 2, 2)
  n <- sample(250:350, 6, replace = TRUE)
  y <- rpois(6, n * 0.15 * runif(2, 0.5, 1.5)[stretch] * exp(g * (day - c(0, 70)[stretch])))
  fit <- glm(y ~ factor(stretch) + day + offset(log(n)), family = poisson, control = glm.control(epsilon = 1e-13, maxit = 100))
  writeLines(paste(paste(stretch, day, y, n, sep = ":", collapse = ","), f(coef(fit)[["day"]]), f(summary(fit)$coefficients["day", 2]), sep = "\t"), out)
}
close(out)
