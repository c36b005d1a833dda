export const HELP = `casewright: from the drawing of a piece of furniture to a plan book that has been proven

  casewright plan  JOB [--out DIR] [--json]     plan the job; write book.pdf, cutting-list.csv and plan.json to DIR
  casewright check JOB [--json]                 plan it and list what is to be put right
  casewright parts JOB [--json]                 list every part with its sizes
  casewright steps JOB [--from CARD] [--json]   print the step cards in order, all or from one on
  casewright why   JOB WHAT                     say where a number comes from: why JOB "left side.length",
                                                or its place in plan --json: why JOB overall_mm/width
  casewright dry-fit JOB [--json]               run the step cards on virtual stock, compare with the drawing
  casewright cut   JOB [--seconds S] [--json]   show how the stock is cut up
  casewright cut   JOB --sawn S1,S2 [--spoiled A1] [--out FILE]
                                                note what is cut, and what of it is spoiled: the new job plans the rest
  casewright cut   JOB --ticked [--out FILE]    note cuts whose cards are ticked: the new job goes on from the pieces
                                                that lie there
  casewright cut   --list FILE.csv --shop FILE [--seconds S] [--json]
                                                cut a list of your own from the rack of a shop
  casewright cut   --problem FILE [--seconds S] [--json]
                                                plan a list of pieces on a list of sheets or bars
  casewright app   [JOB] [--port N]             open the job in a browser on this machine

JOB is a job file; examples/glaze-cabinet.json is one to begin with. Every command takes --shop FILE to build it
in another shop than its own. --json writes JSON to standard output and nothing else there.

Exit codes: 0 fine, 1 something must be put right first, 2 the input can't be read, 3 our own mistake.
`;
