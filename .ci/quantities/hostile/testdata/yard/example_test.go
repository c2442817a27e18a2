package yard_test

import (
	"fmt"

	"example.com/yard"
)

func Example() {
	h, _ := yard.Half(3)
	n, _ := yard.Write("a note")
	fmt.Println(h, yard.Inverse(2), yard.Pick(1), yard.Bench{Legs: 4}.Wait(), yard.Deep(1), yard.Seal(2).Open(), yard.Carry(1).Err(), n.Text, yard.Largest([]float64{1, 2}), yard.MustHalf(1))
	for x := range yard.Count(4) {
		fmt.Println(x)
	}
	// Output:
	// 1.5 0.5 b 4 1 2 <nil> a note 2 0.5
	// 2
}
