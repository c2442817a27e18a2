module example.com/yard

go 1.26.0
