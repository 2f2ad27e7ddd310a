package syntax

import (
	"maps"
	"slices"
	"strings"
)

// fold brings the trade's spellings into one word each, so that the grammar knows only one. No name of
// a stitch stands here but the slip stitch, which is the same in US and UK terms.
var fold = table(`
skip: sk skp miss skips missing skipping
skipped: missed
rep: repeat repeats repeated repeating rpt reps
in: into onto on
each: ea every
next: nxt following foll
st: sts stitch stitches
sp: sps space spaces
loop: loops lp lps arch arches
ch: chain chains chs chained
centre: center middle
rnd: rnds round rounds rd rds
row: rows rw rws
tch: t-ch
beg: beginning
first: 1st
join: joining joined
turn: turning
rem: remain remaining remains
colour: color colors colours col
end: ending ends
across: along
around: round-about
group: groups gr grp petal petals scallop scallops
time: times
slst: ss sl-st sl-sts ss's
inc: increase incs increases
dec: decrease decs decreases
change: changing
from: fr
hook: hk
with: w
corner: corners cnr
prev: previous preceding
cont: continue continuing
pm: place-marker
tog: together
`)

// afterStop are words that only ever go on a sentence: behind a full stop they show that it belongs to an abbreviation.
var afterStop = set("in into on onto over around round from of tog between to for until")

// misprints are what bad typing and scanning make of the words above.
var misprints = table(`
across: acrosss acrocc accross arcoss
each: eahc
first: frist
from: fron
in: tn
next: netx nect nexst
rep: reapeat repaet repeate repat
ring: rign
rnd: rounnd roudn
row: rwo
skip: skipp seek
sl: s1
slst: s1st
sp: soace spcae
st: stst sis ststs stich
turn: tunr trun
circle: cirlce
`)

// doubled are the words that never stand twice in a row.
var doubled = set("and in to the of top each next from rep skip across around with work ch st sp")

// signs of the grammar that no library of stitches is asked about.
var grammar = set(`a across around an and all any as at back beg between both by centre ch change close cont corner count counts cut
	dec do drop each end ending evenly facing fasten first foundation from front group hook in inc is it join last leave leaving loop
	make make magic marker more next not of off on only over pick place post rem rep ring rnd row rs same side skip skipped
	slip sp st tch the then throughout time to tog together top turn twice under until up with work worked working ws x yarn you`)

// grammarWords are all words of the grammar, in order, to look for near ones.
var grammarWords = func() []string {
	all := maps.Clone(grammar)
	for _, to := range fold {
		all[to] = true
	}
	return slices.Sorted(maps.Keys(all))
}()

var numberWords = map[string]int{"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8,
	"nine": 9, "ten": 10, "eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16,
	"seventeen": 17, "eighteen": 18, "nineteen": 19, "twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80, "ninety": 90}

var ordinalWords = map[string]int{"second": 2, "third": 3, "fourth": 4, "fifth": 5, "sixth": 6, "seventh": 7, "eighth": 8,
	"ninth": 9, "tenth": 10, "eleventh": 11, "twelfth": 12, "thirteenth": 13, "fourteenth": 14, "fifteenth": 15, "sixteenth": 16,
	"seventeenth": 17, "eighteenth": 18, "nineteenth": 19, "twentieth": 20, "thirtieth": 30, "fortieth": 40, "fiftieth": 50}

// spelled reads a number or an ordinal in words, "twenty", "twenty-four", "twenty-fourth"; ordinal says which.
func spelled(low string) (n int, ordinal, ok bool) {
	tens, unit, hyphened := strings.Cut(low, "-")
	if !hyphened {
		if n, ok = numberWords[low]; ok {
			return n, false, true
		}
		n, ok = ordinalWords[low]
		return n, true, ok
	}
	ten := numberWords[tens]
	if ten < 20 {
		return 0, false, false
	}
	if unit == "first" {
		return ten + 1, true, true
	}
	if n, ok = numberWords[unit]; ok && n < 10 {
		return ten + n, false, true
	}
	n, ok = ordinalWords[unit]
	return ten + n, true, ok && n < 10
}

// often says how many times; "once" and its like stand for a number and "times".
var often = map[string]int{"once": 1, "twice": 2, "thrice": 3}

// spaced are stitch names that old prints set with a blank between the letters.
var spaced = [][]string{{"h", "d", "c"}, {"half", "d", "c"}, {"s", "c"}, {"d", "c"}, {"d", "tr"}}

// unitWords are other names of the trade's standard groups.
var unitWords = map[string]string{"sh": "shell", "vst": "v-st", "v-stitch": "v-st", "v-stitches": "v-st"}

// lookalikes are letters of other alphabets that a page may hold in place of ours.
var lookalikes = strings.NewReplacer("ı", "i", "а", "a", "с", "c", "ԁ", "d", "е", "e", "һ", "h", "і", "i", "о", "o", "р", "p",
	"ѕ", "s", "т", "t", "х", "x", "’", "'", "ﬁ", "fi", "ﬂ", "fl")

func plainLetters(low string) string {
	for i := range len(low) {
		if low[i] >= 0x80 {
			return lookalikes.Replace(low)
		}
	}
	return low
}

// known reports whether a word is one of the grammar or made of plain letters only, so that it can be looked up.
func known(low string) bool {
	for i := range len(low) {
		if low[i] >= 0x80 {
			return false
		}
	}
	return true
}

// table reads lines "word: spelling spelling ..." into a map from spelling to word.
func table(lines string) map[string]string {
	m := map[string]string{}
	for line := range strings.Lines(strings.TrimSpace(lines)) {
		to, from, _ := strings.Cut(line, ":")
		for _, f := range strings.Fields(from) {
			m[f] = to
		}
	}
	return m
}

func set(words string) map[string]bool {
	m := map[string]bool{}
	for _, w := range strings.Fields(words) {
		m[w] = true
	}
	return m
}
