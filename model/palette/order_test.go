package palette

import (
	"slices"
	"strings"
	"testing"
)

func letters(o Order) string {
	return strings.Join(InOrder([]string{"A", "B", "C", "D", "E"}[:len(o)], o), "")
}

func TestOrdersOfLetters(t *testing.T) {
	for _, tt := range []struct {
		name   string
		orders []Order
		want   string
	}{
		{"as they are", []Order{AsTheyAre(3)}, "ABC"},
		{"B and C swapped", []Order{Swapped(3, 1, 2)}, "ACB"},
		{"all rotated", []Order{Rotated(make([]bool, 4))}, "BCDA"},
		{"rotated about a lock", []Order{Rotated([]bool{false, true, false, false})}, "CBDA"},
		{"one alone cannot rotate", []Order{Rotated([]bool{true, false, true})}, "ABC"},
		{"all of three", Orders(make([]bool, 3), 99), "ABC ACB BAC BCA CAB CBA"},
		{"all of three, B locked", Orders([]bool{false, true, false}, 99), "ABC CBA"},
		{"all locked", Orders([]bool{true, true}, 99), "AB"},
		{"no yarns", Orders(nil, 99), ""},
		{"no more than asked for", Orders(make([]bool, 5), 2), "ABCDE ABCED"},
	} {
		var got []string
		for _, o := range tt.orders {
			got = append(got, letters(o))
		}
		if s := strings.Join(got, " "); s != tt.want {
			t.Errorf("%s: %s, want %s", tt.name, s, tt.want)
		}
	}
}

// As many rotations as there are free letters come back to the beginning.
func TestRotationsComeRound(t *testing.T) {
	locked := []bool{false, true, false, false, false}
	now := []string{"A", "B", "C", "D", "E"}
	for range 4 {
		now = InOrder(now, Rotated(locked))
	}
	if !slices.Equal(now, []string{"A", "B", "C", "D", "E"}) {
		t.Errorf("four rotations of four letters give %v", now)
	}
}

func TestEveryOrderComesOnce(t *testing.T) {
	met := map[string]bool{}
	for _, o := range Orders(make([]bool, 5), 1000) {
		met[letters(o)] = true
	}
	if len(met) != 120 {
		t.Errorf("five letters stand in %d orders", len(met))
	}
}
