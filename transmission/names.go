package transmission

import "sync"

// TwoAtOnce is the key of two listed causes at once that the ranking does not list
// as a pair: many pairs that are each too unlikely to name.
const TwoAtOnce = "two-at-once"

const twoText = "two of these at once, no two of them plainly"

// members are the places of the causes that a key stands for.
type members struct{ a, b int }

// index finds causes and pairs of them by their key: b is a where there is one.
var index = sync.OnceValue(func() map[string]members {
	at := make(map[string]members, causeCount*causeCount/2)
	for i, c := range KnownCauses() {
		at[c.Key] = members{i, i}
		for j := range i {
			at[named()[j][i].key] = members{j, i}
		}
	}
	return at
})

type name struct{ key, text, do string }

// named are the names of pairs, put together once.
var named = sync.OnceValue(func() *[causeCount][causeCount]name {
	var n [causeCount][causeCount]name
	list := KnownCauses()
	for i, a := range list {
		for j, b := range list[i+1:] {
			n[i][i+1+j] = name{a.Key + "+" + b.Key, a.Text + ", and " + b.Text, a.Do + "; and " + b.Do}
		}
	}
	return &n
})
