/** Calculations: those that people kept with the machine, and those behind the numbers of findings. */
export const calculationsTemplate = `
#let working-way(w) = [
  #if w.inputs.len() > 0 {
    table(columns: (22mm, 1fr, 32mm, 48mm),
      table.header[Symbol][Input][Value][From],
      ..w.inputs.map(i => (i.symbol, i.name, i.value, i.from)).flatten())
  }
  #for f in w.formula [
    #block(above: 1.6mm, below: 1.6mm, inset: (left: 4mm), f)
  ]
  #for s in w.steps [
    #block(above: 1.2mm, below: 1.2mm)[#text(fill: soft)[#s.label:] #s.value]
  ]
]
#let working-body(w) = [
  #working-way(w)
  #block(above: 2mm)[*#w.result.label: #w.result.value*]
]
#let working-title(mark, title) = {
  show heading: it => block(above: 7mm, below: 2.4mm, sticky: true, text(size: 10pt, weight: 600, it.body))
  [#heading(level: 3)[#mark #title] #label(lower(mark))]
}

= Calculations
#if d.kept.len() > 0 [
  == Kept with the machine
  Each was worked out anew for this file, from what was typed. It supports a decision; the source, the safety data sheet
  and a competent person decide.
  #for k in d.kept [
    #working-title("K" + str(k.number), k.title)
    #block(above: 0mm, below: 2mm, text(size: 8.5pt, fill: soft)[
      #k.formulaTitle#if k.finding > 0 [ · belongs to #link(label("f" + str(k.finding)))[finding #k.finding]]
    ])
    #if k.note != "" [#block(k.note)]
    #if k.typed.len() > 0 [
      #block(below: 2mm, text(size: 8.5pt)[#text(fill: soft)[Typed:] #k.typed.map(t => [#t.label: #t.value]).join(" · ")])
    ]
    #if k.working == none [
      #block(fill: wash, width: 100%, inset: (x: 3mm, y: 2.2mm), radius: 0.8mm)[*No number.* #k.refusal]
    ] else [
      #working-body(k.working)
    ]
    #if k.before != "" [
      #block(fill: wash, width: 100%, inset: (x: 3mm, y: 2.2mm), radius: 0.8mm)[
        *Changed.* When it was kept it gave #k.before.
      ]
    ]
    #for t in k.tables [
      #block(above: 3mm, below: 1.5mm, sticky: true, text(size: 8.5pt, fill: soft, t.title))
      #table(columns: t.columns.len(), table.header(..t.columns), ..t.rows.flatten())
      #if t.more > 0 [#text(size: 8.5pt, fill: soft)[and #t.more more rows]]
    ]
    #if k.working != none [
      #block(text(size: 8.5pt, fill: soft)[Source: #k.working.source. Validity: #k.working.validity])
      #if k.working.warnings.len() > 0 { bullets(k.working.warnings) }
    ]
  ]
]
== Behind the numbers
Each number of a finding, of cleaning and of samples with the way it came about, so that it can be redone by hand.
#let used-by(list) = list.map(n => link(label("f" + str(n)), str(n))).join(", ")
#for w in d.workings [
  #if w.rows.len() == 0 [
    #working-title("C" + str(w.number), w.title)
    #working-body(w)
  ] else [
    #show heading: it => block(above: 7mm, below: 2.4mm, sticky: true, text(size: 10pt, weight: 600, it.body))
    #heading(level: 3)[C#w.number and #(w.rows.len() - 1) more: #w.title]
    #working-way(w)
    #show table.cell: set text(size: 8pt)
    #table(columns: (10mm,) + w.columns.map(c => 1fr) + (18mm,),
      table.header([No.], ..w.columns, [Findings]),
      ..w.rows.map(r => (
        [#metadata("c" + str(r.number))#label("c" + str(r.number))C#r.number],
        ..r.values,
        used-by(r.usedBy),
      )).flatten())
  ]
  #block(text(size: 8.5pt, fill: soft)[
    Source: #w.source. Validity: #w.validity.#if w.rows.len() == 0 and w.usedBy.len() > 0 [ Used by #if w.usedBy.len() > 1 [findings] else [finding] #used-by(w.usedBy).]
  ])
  #if w.warnings.len() > 0 { bullets(w.warnings) }
]
`;
