import { calculationsTemplate } from './template-calculations.ts';
import { endTemplate } from './template-end.ts';
import { findingsTemplate } from './template-findings.ts';
import { tablesTemplate } from './template-tables.ts';
import { workTemplate } from './template-work.ts';

/** Page, type and the first chapters. Typst markup; every word of a user arrives as data and is never read as markup. */
const frame = `
#let d = json("data.json")
#let ink = rgb("#1b2430")
#let soft = rgb("#56616d")
#let line-tone = rgb("#cfd6dc")
#let water = rgb("#1f6f9f")
#let wash = rgb("#eef3f6")

#set document(
  title: d.title,
  author: (),
  date: datetime(year: d.year, month: d.month, day: d.day),
)
#set text(font: "Source Sans 3", fallback: false, size: 9.5pt, fill: ink, lang: "en", region: "GB",
  number-type: "lining", number-width: "tabular", hyphenate: false)
#set par(leading: 0.58em, spacing: 0.85em, justify: false)
#set page(
  paper: "a4",
  margin: (x: 20mm, top: 24mm, bottom: 22mm),
  header: context {
    if counter(page).get().first() > 1 [
      #set text(size: 8pt, fill: soft)
      #grid(columns: (1fr, auto), column-gutter: 6mm,
        box(width: 100%, height: 1em, clip: true, d.head),
        if d.invented [invented demo data])
      #v(-1.5mm)
      #line(length: 100%, stroke: 0.4pt + line-tone)
    ]
  },
  footer: context {
    set text(size: 8pt, fill: soft)
    grid(columns: (1fr, auto),
      [Decision support, never a certificate · #d.date],
      [Page #counter(page).display("1 of 1", both: true)])
  },
)
#set table(stroke: (x, y) => (bottom: 0.4pt + line-tone), inset: (x: 2pt, y: 3.2pt), align: left + top)
#show table.cell.where(y: 0): set text(size: 8pt, fill: soft)
#set heading(numbering: none)
#show heading.where(level: 1): it => {
  pagebreak(weak: true)
  block(below: 6mm, text(size: 18pt, weight: 600, it.body))
}
#show heading.where(level: 2): it => block(above: 7mm, below: 3mm, sticky: true, text(size: 12.5pt, weight: 600, it.body))
#show heading.where(level: 3): it => block(above: 4.5mm, below: 2mm, sticky: true, text(size: 10pt, weight: 600, fill: soft, it.body))
#show link: set text(fill: water)

#let sign(name, size: 3.6mm) = box(baseline: 18%, pdf.artifact(image(bytes(d.signs.at(name)), format: "svg", width: size)))
#let rows(list, first: 42mm) = table(columns: (first, 1fr),
  stroke: (x, y) => (bottom: 0.4pt + line-tone),
  ..list.map(r => (text(size: 9.5pt, fill: soft, r.label), text(size: 9.5pt, fill: ink, r.value))).flatten())
#let bullets(items) = list(marker: [–], spacing: 0.6em, ..items.map(i => [#i]))

// Cover
#v(14mm)
#text(size: 10pt, fill: soft)[Hygienic design file]
#v(1mm)
#block(text(size: 26pt, weight: 600, d.machine))
#block(above: 3mm, text(size: 14pt, fill: soft, d.revision))
#v(1mm)
#if d.invented [
  #block(fill: wash, inset: (x: 4mm, y: 2.6mm), radius: 1mm)[
    Invented: this machine, its builder and its surroundings do not exist. The file shows what a real one would hold.
  ]
]
#align(center, image(d.cover.file, alt: d.cover.alt, width: 132mm))
#v(1fr)
#rows(d.facts)
#v(2mm)
#text(size: 8.5pt, fill: soft)[
  This file supports a decision about the hygienic design of a machine. It is not a certificate. A competent person
  decides, on the machine itself and with the sources in the edition in force.
]

#pagebreak()
#outline(title: [Contents], depth: 1, indent: 0mm)

= Brief
What the machine is for, as it was stated when it was reviewed. Everything below is judged against it.
#for part in d.brief [
  == #part.title
  #rows(part.rows)
]

= Machine
#grid(columns: (1fr, 1fr, 1fr), column-gutter: 4mm,
  ..d.views.map(v => [
    #image(v.file, alt: v.alt, width: 100%)
    #text(size: 8.5pt, fill: soft, v.caption)
  ]))
#text(size: 8.5pt, fill: soft)[Parallel projection; each picture has a scale of its own.]
== Model
#rows(d.health)
#if d.faults.len() > 0 [
  == What is wrong with it
  #bullets(d.faults)
]
== What the reader noticed
#if d.notes.len() == 0 [Nothing: every part was read whole.] else { bullets(d.notes) }
`;

export const template =
  frame + findingsTemplate + tablesTemplate + workTemplate + calculationsTemplate + endTemplate;
