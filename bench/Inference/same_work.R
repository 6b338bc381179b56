# The work of bench/Inference in R: Rscript same_work.R FOLDER. Prints milliseconds, best of several.
folder <- commandArgs(TRUE)[1]
best <- function(what, times, work) {
  work(); low <- Inf
  for (i in seq_len(times)) { t <- system.time(work())[["elapsed"]]; low <- min(low, 1000 * t) }
  cat(sprintf("%9.1f ms  R: %s\n", low, what)); low
}
suppressMessages(library(MASS))
a <- read.csv(file.path(folder, "apiary.csv")); j <- read.csv(file.path(folder, "jars.csv"))
one <- best("the apiary by maximum likelihood, MASS::glm.nb (point estimates only), 20 fits a time", 3, function() for (i in 1:20) suppressWarnings(glm.nb(mites ~ offset(log(bees)), data = a))) / 20
many <- best("10,000 jars: poisson.test limits by qgamma, chance by pgamma, vectorised", 5, function() {
  list(ifelse(j$mites > 0, qgamma(0.025, j$mites), 0) / j$bees, qgamma(0.975, j$mites + 1) / j$bees, pgamma(0.03, j$mites + 0.5, j$bees, lower.tail = FALSE))
})
writeLines(c(sprintf("apiary,%f", one), sprintf("jars,%f", many)), file.path(folder, "r.csv"))
