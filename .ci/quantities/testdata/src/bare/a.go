package bare // want `package bare has no comment`
