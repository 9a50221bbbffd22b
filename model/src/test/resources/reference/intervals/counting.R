# Reference answers of R survival::survcheck (R 4.2.2, survival 3.5-3; run here: Rscript counting.R) on counting-process data sets, clean and with one planted fault each.
library(survival)
sets <- list()
# Stanford heart transplants: waiting, then with a transplant; times in tenths of a day (half days occur).
h <- heart[order(heart$id, heart$start), ]
last <- !duplicated(h$id, fromLast = TRUE)
sets$heart <- data.frame(id = h$id, start = round(10 * h$start), stop = round(10 * h$stop),
  from = ifelse(h$transplant == 1, "transplant", "waiting"),
  to = ifelse(h$event == 1, "dead", ifelse(last, "", "transplant")))
# Chronic granulomatous disease: the state is the number of infections so far.
count <- function(id, event) ave(event, id, FUN = function(e) cumsum(c(0, e[-length(e)])))
g <- cgd[order(cgd$id, cgd$tstart), ]
n <- count(g$id, g$status)
sets$cgd <- data.frame(id = g$id, start = g$tstart, stop = g$tstop, from = paste0("n", n),
  to = ifelse(g$status == 1, paste0("n", n + 1), ""))
# Bladder cancer recurrences: likewise.
b <- bladder2[order(bladder2$id, bladder2$start), ]
n <- count(b$id, b$event)
sets$bladder2 <- data.frame(id = b$id, start = b$start, stop = b$stop, from = paste0("n", n),
  to = ifelse(b$event == 1, paste0("n", n + 1), ""))
# Primary biliary cirrhosis: state is oedema as seen at each visit, death or transplant at the end of follow-up.
p <- pbcseq[order(pbcseq$id, pbcseq$day), ]
p <- p[p$day < p$futime, ]
stop <- ave(p$day, p$id, FUN = function(d) c(d[-1], NA))
last <- is.na(stop)
stop[last] <- p$futime[last]
state <- paste0("oedema", p$edema)
nextState <- c(state[-1], NA)
sets$pbcseq <- data.frame(id = p$id, start = p$day, stop = stop, from = state,
  to = ifelse(last, c("", "transplant", "dead")[p$status + 1], ifelse(nextState == state, "", nextState)))
flags <- function(d) {
  to <- factor(ifelse(d$to == "", "none", d$to))
  to <- relevel(to, "none")
  d$to <- NULL
  f <- survcheck(Surv(start, stop, to) ~ 1, d, id = id, istate = from)$flag
  f[c("overlap", "gap", "jump", "teleport")]
}
all <- do.call(rbind, lapply(names(sets), function(s) cbind(set = s, sets[[s]])))
write.csv(all, "counting-process.csv", row.names = FALSE, quote = FALSE)
set.seed(20261125)
out <- list()
for (s in names(sets)) {
  d <- sets[[s]]
  print(c(set = s, rows = nrow(d), flags(d)))
  later <- which(duplicated(d$id))
  alive <- unique(d$from)
  for (kind in c("overlap", "gap", "jump", "teleport")) {
    done <- 0
    while (done < 25) {
      k <- sample(later, 1); m <- d; len <- m$stop[k] - m$start[k]; before <- m$stop[k - 1] - m$start[k - 1]
      other <- setdiff(alive, c(m$from[k]))
      if (kind == "overlap") { if (before < 2) next; m$start[k] <- m$start[k] - sample(before - 1, 1) }
      if (kind %in% c("gap", "jump")) { if (len < 2) next; m$start[k] <- m$start[k] + sample(len - 1, 1) }
      if (kind %in% c("jump", "teleport")) m$from[k] <- sample(other, 1)
      # Let the states that follow agree with the planted one, so that one fault is planted and not two.
      if (kind %in% c("jump", "teleport") && m$to[k] == "" && k < nrow(m) && m$id[k + 1] == m$id[k]) m$to[k] <- d$from[k + 1]
      f <- flags(m); done <- done + 1
      out[[length(out) + 1]] <- data.frame(set = s, kind = kind, row = k, start = m$start[k], from = m$from[k], to = m$to[k], t(f))
    }
  }
}
faults <- do.call(rbind, out)
write.csv(faults, "counting-process-faults.csv", row.names = FALSE, quote = FALSE)
print(aggregate(cbind(overlap, gap, jump, teleport) ~ set + kind, faults, sum))
