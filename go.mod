module ceilingwright

go 1.26

require github.com/shopspring/decimal v1.6.0

require github.com/stretchr/testify v1.12.1 // indirect
