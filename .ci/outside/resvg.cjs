// Draws SVG files as PNG: node resvg.cjs WIDTH IN.svg OUT.png [IN.svg OUT.png …].
// Beside every OUT.png it writes OUT.png.svg, the picture as it was understood.
const { readFileSync, writeFileSync } = require("fs");
const { createRequire } = require("module");
const { Resvg } = createRequire(process.env.WHORL_OUTSIDE + "/")("@resvg/resvg-js");

const [width, ...files] = process.argv.slice(2);
for (let i = 0; i < files.length; i += 2) {
  const picture = new Resvg(readFileSync(files[i], "utf8"), {
    fitTo: { mode: "width", value: Number(width) },
    font: { loadSystemFonts: true, defaultFontFamily: "Liberation Sans" },
  });
  writeFileSync(files[i + 1] + ".svg", picture.toString());
  writeFileSync(files[i + 1], picture.render().asPng());
}
