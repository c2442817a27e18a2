package util // want `named for nothing`
