package mask

// RowLetters is the name of a row counted from 1: A to Z, then AA, AB and so
// on. Below 1 there is no row and no name.
func RowLetters(row int) string {
	letters := ""
	for ; row > 0; row = (row - 1) / 26 {
		letters = string(rune('A'+(row-1)%26)) + letters
	}
	return letters
}
