package job

import (
	"encoding/json"
	"sync"
	"testing"
)

// The whole job, which comes past the tables of every trade, tells many who ask at once
// what it tells one.
func TestJobManyAtOnce(t *testing.T) {
	tell := func() string {
		r, err := Run(Demo())
		if err != nil {
			t.Error(err)
		}
		text, err := json.Marshal(r)
		if err != nil {
			t.Error(err)
		}
		return string(text)
	}
	alone := tell()
	var all sync.WaitGroup
	for i := range 8 {
		all.Go(func() {
			if tell() != alone {
				t.Errorf("asker %d was told something else than one alone", i)
			}
		})
	}
	all.Wait()
}
