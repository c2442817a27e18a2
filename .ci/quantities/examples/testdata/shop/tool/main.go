// Command tool is not counted.
package main

import "shop/tool/part"

func main() { part.Of() }
