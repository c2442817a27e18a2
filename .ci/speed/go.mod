module speed

go 1.26
