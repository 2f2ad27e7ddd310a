module strandway

go 1.26

require (
	fyne.io/fyne/v2 v2.8.1
	github.com/fogleman/gg v1.3.0
	github.com/golang/freetype v0.0.0-20170609003504-e2365dfdc4a0
	github.com/klauspost/compress v1.18.0
	github.com/lucasb-eyer/go-colorful v1.4.1
	github.com/pelletier/go-toml/v2 v2.4.3
	github.com/rogpeppe/go-internal v1.14.1
	codeberg.org/go-pdf/fpdf v0.12.0
	golang.org/x/image v0.32.0
)
