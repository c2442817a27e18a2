package refdata

import (
	"crypto/sha256"
	"encoding/hex"
	"os"
	"testing"
)

func TestEveryTableReads(t *testing.T) {
	for _, table := range every() {
		if err := table.fault(); err != nil {
			t.Errorf("%s: %v", table.Name(), err)
		}
		if table.Len() == 0 {
			t.Errorf("%s is empty", table.Name())
		}
		seen := map[string]bool{}
		for _, k := range table.keys() {
			if k == "" || seen[k] {
				t.Errorf("%s: a name stands twice", table.Name())
			}
			seen[k] = true
		}
		entry := register()[table.Name()]
		text, err := os.ReadFile("tables/" + table.Name() + ".csv")
		if err != nil {
			t.Error(err)
			continue
		}
		sum := sha256.Sum256(text)
		if got := hex.EncodeToString(sum[:]); got != entry.sha256 {
			t.Errorf("%s: the text has changed: raise its version in register.csv, which is %q, and set its hash to %s", table.Name(), entry.version, got)
		}
	}
}

// The hash of all tables is that of their names and hashes, in the order of the
// register.
func TestHash(t *testing.T) {
	h := sha256.New()
	for _, row := range cells(t, "register") {
		if row["name"] != "all" {
			h.Write([]byte(row["name"] + " " + row["sha256"] + "\n"))
		}
	}
	if got := hex.EncodeToString(h.Sum(nil)); got != Hash() {
		t.Errorf("set the hash of all in register.csv to %s", got)
	}
}

func TestDisagreementsPointAtRows(t *testing.T) {
	byName := map[string]common{}
	for _, table := range every() {
		byName[table.Name()] = table
	}
	for _, d := range Disagreements() {
		table, ok := byName[d.Table]
		if !ok {
			t.Errorf("no table %s", d.Table)
			continue
		}
		if d.Row != "" && !table.has(d.Row) {
			t.Errorf("%s has no row %q", d.Table, d.Row)
		}
		if d.What == "" || d.Served == "" || d.Other == "" {
			t.Errorf("%s, %s: says too little", d.Table, d.Row)
		}
	}
}
