#!/bin/sh
# judge_spacing.sh CAHIER JUDGE SOURCE: in the plans of the examples nearly all gaps between recalls
# lie within half to twice the best gap (Cepeda et al. 2008), worked out from the plans' days alone.
set -u
cahier=$1
judge=$2
source=$3
failed=0

# judged LEAST-SHARE PIECE ARGUMENT…
judged() {
  least=$1
  shift
  "$cahier" plan "$@" --json >plan.json 2>plan.err || {
    echo "cahier plan $*: no plan that fits"
    failed=1
  }
  "$judge" --near "$least" <plan.json >faults.txt || {
    echo "cahier plan $*"
    head -n 5 faults.txt
    failed=1
  }
}

for piece in "$source"/examples/*.yaml; do
  for by in 2027-03-20 2027-06-20; do
    judged 0.95 "$piece" --from 2027-01-04 --by "$by"
  done
done
# Only two days a week: some gaps are longer than twice the best one, and the plan counts them.
judged 0 "$source/examples/lantern-study.yaml" --from 2027-01-04 --by 2027-03-20 --minutes mon:60,fri:60
rm -f plan.json plan.err faults.txt
exit $failed
