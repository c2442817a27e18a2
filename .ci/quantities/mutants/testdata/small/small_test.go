package small

import "testing"

func TestLarger(t *testing.T) {
	if Larger(1, 2) != 2 || Larger(2, 1) != 2 {
		t.Error("not the larger")
	}
}

func TestSum(t *testing.T) {
	if Sum(1, 0) != 1 {
		t.Error("wrong sum")
	}
}

func TestCount(t *testing.T) {
	if Count(3) != 3 {
		t.Error("wrong count")
	}
}
