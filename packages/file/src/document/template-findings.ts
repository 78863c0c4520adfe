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

#let finding-body(f) = [
  #v(4mm, weak: true)
  #line(length: 100%, stroke: 0.4pt + line-tone)
  #v(-1mm)
  #text(size: 8.5pt, fill: soft)[#sign(f.sign) #h(1mm) #f.number · #f.place · #f.status]
  #heading(level: 3, outlined: false, text(size: 11.5pt, fill: ink, f.title))
  #label("f" + str(f.number))
  #grid(columns: (62mm, 1fr), column-gutter: 5mm,
    [
      #image(f.close.file, alt: f.close.alt, width: 62mm)
      #if f.close.caption != "" [#v(-2mm) #text(size: 7.5pt, fill: soft, f.close.caption)]
      #grid(columns: (24mm, 1fr), column-gutter: 3mm,
        image(f.overview.file, alt: f.overview.alt, width: 24mm),
        for n in f.numbers [
          #block(above: 1.8mm, below: 0mm)[
            #text(size: 10.5pt, weight: 600, n.value) #linebreak()
            #text(size: 7.5pt, fill: soft)[#n.label · #link(label("c" + str(n.working)))[C#n.working]]
          ]
        ])
    ],
    [
      #set text(size: 9pt)
      *Why it matters.* #f.why
      #block(above: 2mm, below: 2.4mm, text(size: 8pt, fill: soft, f.order))
      #demand-box(f)
      #if f.remedies.len() > 0 [
        #block(above: 2.6mm, below: 1.4mm, text(fill: soft)[What could be done])
        #bullets(f.remedies.map(r => [#r.text #text(size: 8pt, fill: soft)[(#r.cost)]]))
      ]
      #for c in f.conflict [
        #block(above: 1.8mm, below: 0mm)[#text(fill: soft)[#c.label:] #c.value]
      ]
    ])
  #if f.caveats.len() > 0 [
    #block(above: 2.4mm, below: 0mm, text(size: 8.5pt)[#text(fill: soft)[What the numbers do not say:] #f.caveats.join(" ")])
  ]
  #block(above: 2.4mm, below: 0mm, fill: wash, width: 100%, inset: (x: 3mm, y: 1.8mm), radius: 0.8mm)[
    *Decision: #f.decision.kind.*
    #for l in f.decision.lines [ #linebreak() #text(fill: soft)[#l.label:] #l.value ]
  ]
  #block(above: 2mm, text(size: 8pt, fill: soft)[Parts: #f.parts])
]
// Unbroken, so that two findings share a page where they fit; one that is longer than a page has to break.
#let finding(f) = layout(size => {
  let body = finding-body(f)
  let tall = measure(body, width: size.width).height
  block(width: 100%, breakable: tall > 245mm, above: 6mm, body)
})

#for g in d.groups [
  == #g.title
  #for f in g.findings { finding(f) }
]
`;
