# Makes efficacy-mcmc.tsv: long Markov chain runs of the model of a group in a general engine. Run: Rscript make-efficacy-mcmc.R trial.csv > efficacy-mcmc.tsv
# The argument is the open trial's table (Aurell, Wall, Bruckner & Williams 2024, DOI 10.5281/zenodo.10612430, CC BY 4.0); of its jars only
# summaries are written out. Given all mites of a colony, those after are binomial with odds E1 r g / E0; g is gamma with mean 1.
suppressMessages(library(rstan))
# Debian ships the headers outside the R packages.
if (system.file("include", package = "BH") == "") rstan_options(boost_lib = "/usr/include", boost_lib2 = "/usr/include")
model <- stan_model(model_code = "
data { int<lower=1> C; int<lower=0> y0[C]; int<lower=0> y1[C]; vector<lower=0>[C] n0; vector<lower=0>[C] n1; real<lower=0> scale; }
parameters { real<lower=0,upper=1> p; real<lower=0.01,upper=3> c; vector<lower=0>[C] g; }
model {
  p ~ beta(0.5, 0.5);
  c ~ normal(0, scale);
  g ~ gamma(1 / square(c), 1 / square(c));
  for (i in 1:C) y1[i] ~ binomial(y0[i] + y1[i], n1[i] * p * g[i] / (n0[i] * (1 - p) + n1[i] * p * g[i]));
}
generated quantities { real efficacy = 1 - p / (1 - p); }
")
# Three colonies: draws from the prior weighted by the likelihood, since chains mix slowly where few jars hold the spread back.
weighted <- function(x) {
  set.seed(3); n <- 4e6
  p <- rbeta(n, 0.5, 0.5); c <- abs(rnorm(n, 0, 0.7)); keep <- c < 3; p <- p[keep]; k <- 1 / c[keep]^2
  logs <- 0
  for (i in seq_along(x$y0)) { r <- p / (1 - p) * rgamma(length(k), k, k) * x$n1[i] / x$n0[i]; logs <- logs + dbinom(x$y1[i], x$y0[i] + x$y1[i], r / (1 + r), log = TRUE) }
  w <- exp(logs - max(logs)); e <- 1 - p / (1 - p); o <- order(e); below <- cumsum(w[o]) / sum(w)
  sapply(c(0.05, 0.5, 0.95), function(q) e[o][which(below >= q)[1]])
}
trial <- read.csv(commandArgs(TRUE)[1])
arm <- function(name) {
  a <- trial[trial$arm == name & trial$day == 0, ]; b <- trial[trial$arm == name & trial$day == 21, ]
  m <- merge(a, b, by = "colony"); m <- m[!is.na(m$mites.x) & !is.na(m$mites.y), ]
  list(y0 = m$mites.x, n0 = m$bees.x, y1 = m$mites.y, n1 = m$bees.y, shown = name)
}
own <- function(y0, y1, n0 = rep(300, length(y0)), n1 = n0) list(y0 = y0, y1 = y1, n0 = n0, n1 = n1,
  shown = paste(y0, n0, y1, n1, sep = ":", collapse = ","))
cases <- list(own(c(14, 22, 9), c(0, 1, 0)), own(c(6, 3, 11), c(4, 0, 5)), own(c(14, 22, 7, 29, 11, 1, 39, 6), c(0, 2, 1, 1, 2, 0, 5, 2)),
  own(c(9, 12, 4, 30, 18, 7, 21, 15), rep(0, 8)), own(c(9, 12, 4, 30, 18, 7, 21, 15), c(0, 0, 0, 24, 0, 1, 0, 0), c(310, 290, 333, 280, 301, 322, 270, 300), rep(310, 8)),
  own(rep(c(5, 9, 14, 2), 5), rep(c(1, 0, 2, 1), 5)), arm("amitraz strip"), arm("amitraz strip + thymol gel"), arm("amitraz emulsifiable concentrate"))
cat("# quantiles of the efficacy of a group, prior scale 0.7; Stan, 8 chains of 15,000 draws after 2,000; three colonies: 4,000,000 weighted draws from the prior\n# made by make-efficacy-mcmc.R with", R.version.string, "and rstan", as.character(packageVersion("rstan")), "\n")
cat("case\tq05\tq50\tq95\n")
for (x in cases) {
  if (length(x$y0) <= 3) { cat(x$shown, sprintf("%.6f", weighted(x)), sep = "\t"); cat("\n"); next }
  fit <- sampling(model, data = list(C = length(x$y0), y0 = x$y0, y1 = x$y1, n0 = x$n0, n1 = x$n1, scale = 0.7), chains = 8, iter = 17000, warmup = 2000,
                  seed = 7, refresh = 0, control = list(adapt_delta = 0.99))
  cat(x$shown, sprintf("%.6f", quantile(extract(fit, "efficacy")$efficacy, c(0.05, 0.5, 0.95))), sep = "\t"); cat("\n")
}
