"""Heavy random pieces from fixed seeds, planned and printed: heavy_pieces.py CAHIER FIRST COUNT FOLDER

Says for each its seconds of computing, the command, the exit code and the first line of its errors,
and at the end the slowest of all."""
import os
import random
import resource
import subprocess
import sys

program, first, count, folder = sys.argv[1], int(sys.argv[2]), int(sys.argv[3]), sys.argv[4]
os.makedirs(folder, exist_ok=True)


def piece(r):
    bars=r.choice([500,1000,2500,5000,10000])
    o=["title: Heavy",f"bars: {bars}",r.choice(["meter: 4/4","meter: 3/4","meter: 6/8"]),f"tempo: {r.choice([60,96,120,160])}",f"level: {r.randint(1,5)}"]
    o.append("practice: {minutes: %d, temper: %s, order: %s}"%(r.choice([15,60,120,240,480]),r.choice(["yes","no","weak bars only"]),r.choice(["forward","backward","hardest first"])))
    if r.random()<.7:
        o.append("sections:"); at=1; size=r.choice([1,2,4,8,16,60]); n=0
        while at<=bars:
            last=min(bars,at+r.randint(max(1,size//2),size*3//2 or 1)-1); extra=""
            if at>last-at+1 and r.random()<.3:
                src=r.randint(1,at-(last-at+1)); extra=f", same as: {src}-{src+last-at}"
            elif r.random()<.2: extra=f", level: {r.randint(1,5)}"
            o.append(f"  - {{name: S{n}, bars: {at}-{last}{extra}}}"); at=last+1; n+=1
    if r.random()<.6:
        o.append("look-alikes:"); left=45000
        for _ in range(r.choice([5,50,200,400])):
            L=r.choice([2,4,16,100,400])
            if 2*L>bars//2 or 2*L>left: continue
            left-=2*L; a=r.randint(1,bars//2-L); b=r.randint(bars//2,bars-L+1); f=r.randint(0,L-1)
            o.append(f"  - {{bars: [{a}-{a+L-1}, {b}-{b+L-1}], fork: [{a+f}, {b+f}]}}")
    if r.random()<.5:
        o.append("changes:")
        for b in sorted(r.sample(range(2,bars+1),min(bars-1,r.choice([20,400,5000])))): o.append("  - {bar: %d, %s}"%(b,r.choice(["meter: 3/4","tempo: %d"%r.randint(40,200),"key: A minor","meter: 5/8, tempo: 90"])))
    if r.random()<.4:
        o.append("hard:")
        for _ in range(r.choice([10,300,1000])): b=r.randint(1,bars-4); o.append(f"  - {{bars: {b}-{b+r.randint(0,4)}, level: {r.randint(1,5)}}}")
    if r.random()<.5:
        o.append("repeats:"); at=1
        while at+20<bars: o.append(f"  - {{bars: {at}-{at+r.randint(1,19)}, times: {r.choice([2,3,5])}}}"); at+=r.randint(20,300)
    if r.random()<.4: o.append("cues: [%s]"%", ".join(map(str,sorted(r.sample(range(1,bars+1),min(bars,r.choice([20,300,2000])))))))
    return "\n".join(o)+"\n"

def seconds(command):
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    try:
        done = subprocess.run(command, capture_output=True, text=True, timeout=120)
        code, said = done.returncode, (done.stderr.strip().splitlines() or [""])[0]
    except subprocess.TimeoutExpired:
        code, said = "no answer", ""
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime, code, said


slowest = (0, "")
for seed in range(first, first + count):
    r = random.Random(seed)
    path = f"{folder}/{seed}.yaml"
    with open(path, "w") as file:
        file.write(piece(r))
    by = r.choice(["2027-02-15", "2027-05-30", "2027-11-30"])
    for command in (["plan", path], ["print", path, "--anyway", "-o", f"{folder}/{seed}.pdf"]):
        taken, code, said = seconds([program, *command, "--from", "2027-01-04", "--by", by])
        line = f"{taken:7.2f} s  seed {seed}, {command[0]} by {by}: {code} {said[:80]}"
        print(line, flush=True)
        slowest = max(slowest, (taken, line))
print("slowest:", slowest[1])
