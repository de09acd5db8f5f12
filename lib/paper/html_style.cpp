#include "paper/html_style.h"

namespace undersheet::paper {
namespace {

// Contrast (WCAG 2.2, 1.4.3: at least 4.5 to 1) of --quiet on --page: 6.9 light, 8.5 dark.
constexpr Literal kStyleSheet = R"css(
:root { color-scheme: light dark; --page: #ffffff; --ink: #1c2326; --quiet: #535e63; --line: #c6cdd0; --tint: #f3f5f5; }
@media screen and (prefers-color-scheme: dark) {
  :root { --page: #14181a; --ink: #e6eaeb; --quiet: #a8b3b8; --line: #3c464b; --tint: #1d2326; }
}
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; text-size-adjust: 100%; }
html:not(:lang(en)) { -webkit-hyphens: auto; hyphens: auto; hyphenate-limit-chars: 10 4 4; }
body {
  margin: 0 auto; padding: 1.25rem 1rem 3rem; max-width: 46rem; background: var(--page); color: var(--ink);
  font: 1rem/1.5 system-ui, -apple-system, "Segoe UI", Roboto, "Noto Sans", sans-serif; overflow-wrap: anywhere;
}
h1, h2, h3, .verdict { font-family: Charter, "Bitstream Charter", Georgia, "Noto Serif", serif; line-height: 1.25; }
h1 { font-size: 1.9rem; font-weight: 600; margin: 1.5rem 0 0.75rem; }
h2 { font-size: 1.3rem; font-weight: 600; margin: 2.25rem 0 0.6rem; padding-top: 0.6rem; border-top: 1px solid var(--line); }
h3 { font-size: 1.05rem; font-weight: 600; margin: 1.5rem 0 0.4rem; }
p, ul, ol, dl, figure { margin: 0 0 0.75rem; }
ul { padding-left: 1.2rem; }
li { margin-bottom: 0.3rem; }
li:dir(rtl) { margin: 0 1.2rem 0.3rem -1.2rem; }
.firm { color: var(--quiet); margin: 0; }
.firm strong { color: var(--ink); font-size: 1.1rem; }
.verdict { font-size: 1.35rem; margin: 1rem 0; }
dl.facts > div { display: grid; grid-template-columns: minmax(min-content, 11rem) 1fr; gap: 0 1rem; padding: 0.2rem 0; }
dt { color: var(--quiet); overflow-wrap: break-word; }
dd { margin: 0; }
.scroll { overflow-x: auto; margin: 0 0 1rem; }
table { border-collapse: collapse; width: 100%; font-size: 0.94rem; }
caption { text-align: left; color: var(--quiet); padding: 0 0 0.4rem; }
th, td { text-align: left; vertical-align: top; padding: 0.35rem 0.9rem 0.35rem 0; border-bottom: 1px solid var(--line); }
th:last-child, td:last-child { padding-right: 0; }
thead th { color: var(--quiet); font-weight: 500; vertical-align: bottom; border-bottom-color: var(--quiet); }
tbody th { font-weight: 600; }
th, td { overflow-wrap: normal; word-break: normal; }
.words { overflow-wrap: break-word; min-width: 5rem; }
.figures { text-align: right; font-variant-numeric: tabular-nums; }
td.figures { white-space: nowrap; }
tr.beneath td { padding-left: 1.5rem; color: var(--quiet); }
tr.beneath p { margin: 0; }
s { text-decoration-thickness: 1px; color: var(--quiet); }
.item { border-top: 1px solid var(--line); padding: 0.9rem 0 0.4rem; }
.item h3 { margin: 0 0 0.4rem; }
.item .standing { color: var(--quiet); font-weight: 500; }
.pictures { display: grid; grid-template-columns: repeat(auto-fill, minmax(14rem, 1fr)); gap: 1rem; margin: 0.75rem 0; }
.pictures figure { margin: 0; }
img { display: block; width: 100%; height: auto; max-height: 22rem; object-fit: contain; object-position: left top; }
figcaption { color: var(--quiet); font-size: 0.88rem; padding-top: 0.3rem; }
.drawing svg { display: block; width: 100%; min-width: 34rem; height: auto; font-family: inherit; }
.small svg { width: 44mm; min-width: 44mm; }
.drawing text { fill: currentColor; }
.drawing polygon, .drawing polyline { fill: none; stroke: currentColor; stroke-width: 0.25; stroke-linejoin: round; }
.drawing .tint { fill: var(--tint); }
.drawing .fine { stroke-width: 0.12; }
.drawing .heavy { stroke-width: 0.7; }
.drawing .dashed { stroke-dasharray: 1.2 1; }
.drawing .no-line { stroke: none; }
.drawing .ink { fill: currentColor; }
.drawing .paper { fill: var(--page); }
.small .ink { fill: #000; }
.small .paper { fill: #fff; }
.signature { margin: 1rem 0; padding-top: 0.4rem; border-top: 1px solid var(--ink); max-width: 26rem; }
.signature p { margin: 0; }
.signature .pen { height: 2.6rem; }
.quiet { color: var(--quiet); }
footer { margin-top: 3rem; padding-top: 0.75rem; border-top: 1px solid var(--line); color: var(--quiet); font-size: 0.85rem; }
footer ul { margin-bottom: 0.5rem; }
footer p { margin-bottom: 0.35rem; }
code { font-family: ui-monospace, "DejaVu Sans Mono", Consolas, monospace; font-size: 0.92em; overflow-wrap: anywhere; }
@media print, (min-width: 34.01rem) {
  header { display: grid; grid-template-columns: 1fr auto; column-gap: 1.5rem; align-items: start; }
  header h1 { grid-column: 1; margin: 0; grid-row: 1; }
  .from { grid-column: 2; grid-row: 1 / span 2; text-align: right; }
  header dl.facts { grid-column: 1 / -1; columns: 2; column-gap: 2rem; margin-top: 1rem; }
  header dl.facts > div { break-inside: avoid; grid-template-columns: 5.5rem 1fr; }
  .signature { display: inline-block; vertical-align: top; width: 14rem; margin-right: 1rem; }
}
@media screen and (max-width: 34rem) {
  dl.facts > div { grid-template-columns: minmax(min-content, 6.5rem) 1fr; gap: 0 0.75rem; }
  html:not(:lang(en)) dl.facts > div { grid-template-columns: minmax(min-content, 8rem) 1fr; }
  table.stacks, .stacks tbody, .stacks tr, .stacks th, .stacks td { display: block; }
  .stacks caption { display: block; }
  .stacks thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
  .stacks tr { border-bottom: 1px solid var(--line); padding: 0.5rem 0; }
  .stacks th, .stacks td { border: 0; padding: 0.1rem 0; text-align: left; }
  .stacks td:empty { display: none; }
  .stacks td[data-header]::before { content: attr(data-header) ": "; color: var(--quiet); }
  .stacks tr:has(+ .beneath) { border-bottom: 0; padding-bottom: 0; }
  .stacks tr.beneath td { padding-left: 1rem; }
}
@page { size: A4; margin: 17mm 17mm 20mm; }
@media print {
  :root { color-scheme: light; }
  html { font-size: 9.5pt; }
  body { max-width: none; padding: 0; line-height: 1.35; }
  h1 { font-size: 19pt; }
  h2 { font-size: 12.5pt; margin: 4.5mm 0 1.5mm; padding-top: 2mm; }
  h3 { font-size: 10.5pt; margin: 3mm 0 1mm; }
  .verdict { font-size: 14pt; margin: 3mm 0; }
  p, ul, dl { margin-bottom: 2mm; }
  dl.facts > div { padding: 0.3mm 0; break-inside: avoid; }
  li { margin-bottom: 0.5mm; }
  th, td { padding-top: 0.8mm; padding-bottom: 0.8mm; }
  .item { padding: 2mm 0 1mm; }
  .signature { width: 52mm; margin: 1mm 5mm 1mm 0; padding-top: 1.5mm; }
  .signature .pen { height: 12mm; }
  header, h1, h2, h3, h3 + p, caption { break-after: avoid; }
  .item, figure, .signature, tr, li { break-inside: avoid; }
  thead { display: table-header-group; }
  .scroll { overflow: visible; }
  .drawing { break-inside: avoid; break-before: avoid; }
  .scroll svg { min-width: 0; }
  .page-break { break-after: page; }
  .pictures { grid-template-columns: repeat(3, 1fr); gap: 4mm; }
  img { max-height: 75mm; }
  footer { margin-top: 8mm; font-size: 8pt; break-inside: avoid; }
}
)css";

} // namespace

Literal style_sheet() { return kStyleSheet; }

} // namespace undersheet::paper
