/** Findings at a glance, then each as an argument. */
export const findingsTemplate = `
= Findings
#d.summary

#table(columns: (9mm, 9mm, 1fr, 26mm, 25mm, 10mm), 
  table.header[No.][Kind][What is wrong][Status][Decision][Page],
  ..d.groups.map(g => g.findings.map(f => (
    link(label("f" + str(f.number)), str(f.number)),
    sign(f.sign),
    f.title,
    f.status,
    f.decision.kind,
    context [#counter(page).at(label("f" + str(f.number))).first()],
  ))).flatten())

#let demand-box(f) = block(width: 100%, stroke: (left: 1.6pt + water), inset: (left: 3.2mm, y: 0.6mm))[
  #f.demand
  #if f.limit != "" [ #text(fill: soft)[Limit: #f.limit.] ]
  #for s in f.sources [
    #linebreak() #text(size: 8pt, fill: soft, s)
  ]
]

#let finding(f) = [
  #block(above: 9mm, sticky: true, below: 2mm)[
    #line(length: 100%, stroke: 0.4pt + line-tone)
    #v(-1mm)
    #text(size: 8.5pt, fill: soft)[#sign(f.sign) #h(1mm) #f.number · #f.place · #f.status]
  ]
  #heading(level: 3, outlined: false, text(size: 12pt, fill: ink, f.title))
  #label("f" + str(f.number))
  #grid(columns: (104mm, 1fr), column-gutter: 5mm,
    [
      #image(f.close.file, alt: f.close.alt, width: 104mm)
      #if f.close.caption != "" [#text(size: 8pt, fill: soft, f.close.caption)]
    ],
    [
      #image(f.overview.file, alt: f.overview.alt, width: 44mm)
      #for n in f.numbers [
        #block(above: 2.2mm, below: 0mm)[
          #text(size: 12pt, weight: 600, n.value) #linebreak()
          #text(size: 8pt, fill: soft)[#n.label · #link(label("c" + str(n.working)))[C#n.working]]
        ]
      ]
    ])
  #block[*Why it matters.* #f.why]
  #block(text(size: 8.5pt, fill: soft)[Its place in the order: #f.order])
  #demand-box(f)
  #if f.remedies.len() > 0 [
    #table(columns: (1fr, 24mm), table.header[What could be done][Cost],
      ..f.remedies.map(r => (r.text, r.cost)).flatten())
  ]
  #for c in f.conflict [
    #block(above: 2mm, below: 0mm)[#text(fill: soft)[#c.label:] #c.value]
  ]
  #if f.caveats.len() > 0 [
    #block(above: 3mm)[#text(fill: soft)[What the numbers do not say:]]
    #bullets(f.caveats)
  ]
  #block(above: 3mm, fill: wash, width: 100%, inset: (x: 3mm, y: 2.2mm), radius: 0.8mm)[
    *Decision: #f.decision.kind.*
    #for l in f.decision.lines [ #linebreak() #text(fill: soft)[#l.label:] #l.value ]
  ]
  #block(above: 2mm, text(size: 8pt, fill: soft)[Parts: #f.parts])
]

#for g in d.groups [
  == #g.title
  #for f in g.findings { finding(f) }
]
`;
