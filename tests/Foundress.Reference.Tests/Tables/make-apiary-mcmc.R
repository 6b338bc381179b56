# Makes apiary-mcmc.tsv: a long Markov chain run of the apiary model in a general engine. Run: Rscript make-apiary-mcmc.R trial.csv > apiary-mcmc.tsv
# The argument is the open trial's table (Aurell, Wall, Bruckner & Williams 2024, DOI 10.5281/zenodo.10612430, CC BY 4.0); only summaries of
# its day-0 jars are written out. Mites are negative binomial given mean and spread (priors of docs/methods/apiary.md); levels of
# colonies, and of ten unsampled ones, are drawn from their exact gamma distributions in each iteration.
suppressMessages(library(rstan))
# Debian ships the headers outside the R packages.
if (system.file("include", package = "BH") == "") rstan_options(boost_lib = "/usr/include", boost_lib2 = "/usr/include")
model <- stan_model(model_code = "
data { int<lower=1> C; int<lower=0> y[C]; vector<lower=0>[C] n; vector<lower=0>[C] s; int<lower=0> U; }
parameters { real a; real<lower=1e-6,upper=6> c; vector[C] z; }
model {
  a ~ normal(log(0.02), 2);
  c ~ normal(0, 1.5);
  z ~ normal(0, 1);
  y ~ neg_binomial_2_log(a + log(n) + s .* z, 1 / square(c));
}
generated quantities {
  vector[C] level;
  real unsampled;
  real average;
  real over = 0;
  real k = 1 / square(c);
  real total = 0;
  for (i in 1:C) level[i] = 100 * gamma_rng(y[i] + k, n[i] * exp(s[i] * z[i]) + k * exp(-a));
  for (j in 1:U) {
    unsampled = 100 * gamma_rng(k, k * exp(-a));
    total += unsampled;
    if (unsampled > 3) over += 1;
  }
  average = (sum(level) + total) / (C + U);
}")
cat("# posterior summaries of the apiary model by Hamiltonian Monte Carlo; levels in mites per 100 bees, spread = 1/sqrt(k)\n")
cat("# made by make-apiary-mcmc.R with rstan ", as.character(packageVersion("rstan")), ", ", R.version.string, "; 8 chains of 12,500 kept draws, seed 20\n", sep = "")
cat("# jars: mites:bees:logSpread, or the day-0 jars of an arm of the open trial\n")
cat("case\tjars\tunsampled\tquantity\tmean\terrorOfMean\tq025\tq25\tq50\tq75\tq975\tover3\tover10\tlargestRhat\n")
only <- commandArgs(trailingOnly = TRUE)[-1] # names of cases; all when none is given
run <- function(name, jars, y, n, s, U) {
  if (length(only) > 0 && !(name %in% only)) return(invisible())
  fit <- sampling(model, data = list(C = length(y), y = as.array(y), n = as.array(n), s = as.array(s), U = U), chains = 8, iter = 14000, warmup = 1500, seed = 20,
                  refresh = 0, cores = 1, control = list(adapt_delta = 0.95))
  rhat <- max(summary(fit)$summary[c("a", "c", "average"), "Rhat"])
  d <- extract(fit, permuted = FALSE)
  put <- function(quantity, parameter, f = identity) {
    x <- f(d[, , parameter])
    batches <- apply(x, 2, function(v) colMeans(matrix(v, ncol = 25)))
    q <- quantile(x, c(.025, .25, .5, .75, .975))
    cat(name, jars, U, quantity, sprintf("%.7g", c(mean(x), sd(batches) / sqrt(length(batches)), q, mean(x > 3), mean(x > 10), rhat)), sep = "\t"); cat("\n")
  }
  put("populationMean", "a", function(v) 100 * exp(v))
  put("spread", "c")
  put("average", "average")
  for (i in intersect(unique(c(1, 2, 3, which.max(y))), seq_along(y))) put(paste0("level", i), paste0("level[", i, "]"))
  if (U > 0) put("unsampledOver3", "over")
  if (U > 0) put("anyUnsampledOver3", "over", function(v) (v > 0) + 0)
}
plain <- function(name, y, n, s, U) run(name, paste(paste(y, n, s, sep = ":"), collapse = ","), y, n, s, U)
trial <- read.csv(commandArgs(trailingOnly = TRUE)[1])
for (arm in sort(unique(trial$arm))) {
  day0 <- trial[trial$arm == arm & trial$day == 0, ]
  run(paste("day 0", arm), "trial", day0$mites, day0$bees, rep(0, nrow(day0)), 10)
}
plain("eight counted", c(14, 3, 0, 9, 22, 5, 7, 2), rep(300, 8), rep(0, 8), 32)
plain("eight assumed", c(14, 3, 0, 9, 22, 5, 7, 2), rep(300, 8), rep(0.15, 8), 32)
plain("eight loosely assumed", c(40, 3, 0, 90, 22, 5, 7, 2), rep(300, 8), rep(0.4, 8), 5)
plain("no mites", rep(0, 8), rep(300, 8), rep(0, 8), 32)
plain("three colonies", c(1, 6, 2), c(300, 250, 320), rep(0, 3), 9)
plain("one colony", 9, 300, 0, 9)
plain("odd sizes", c(40, 0, 3), c(10000, 10, 35), rep(0, 3), 10)
plain("equal colonies", rep(9, 30), rep(300, 30), rep(0, 30), 0)
