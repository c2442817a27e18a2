package shop_test

import (
	"fmt"

	"shop"
)

func ExampleShown() {
	for _, b := range shop.Shown() {
		b.Turn()
		fmt.Println(b)
	}
	// Output: bolt
}

func ExampleSilent() { shop.Silent() }

func ExampleBox() {
	box := shop.Box[shop.Washer]{}
	box.Open()
	// Output:
}
