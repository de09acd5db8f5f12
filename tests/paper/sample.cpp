#include "tests/paper/sample.h"

namespace undersheet::test {

using namespace paper;

namespace {

// The smallest PNG there is: one grey point.
const std::string
    kOnePoint("\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\0\1\0\0\0\1\x08\0\0\0\0:~\x9bU\0\0\0\nIDATx\x9c"
              "c\xa8\0\0\0\x81\0\x80\x8a\x11\x8f\x8c\0\0\0\0IEND\xae"
              "B`\x82",
              67);

Head usual_head() {
    return {.firm = "Harrow & Finch, flat roofs",
            .firm_address = "4 Kiln Lane, Marlow Wick",
            .firm_phone = "01632 960 145",
            .job = "HF-12",
            .roof = "back extension",
            .customer = "Mrs Odile Ferring",
            .customer_address = "9 Tanners Row\nMarlow Wick",
            .name = "Deck inspection",
            .number = "1",
            .issue = "2",
            .date = "3 March 2026"};
}

} // namespace

Document usual_paper() {
    Document paper;
    paper.head = usual_head();
    paper.add(Verdict{"The deck is fit to bond to when 1 thing has been put right."});
    paper.heading("Moisture")
        .add(
            Table{"Six points, read on 3 March 2026",
                  {{"Point"}, {"Read, %", Column::figures}, {"Board, °C", Column::figures}, {"What it says"}},
                  {{{"P1", "12.1", "15.5", "dry enough"}},
                   {{"P2", "18.4", "15.5", strong("over 18 %: say why before signing")}}}});
    paper.heading("To put right")
        .add(Item{"1",
                  "put right before covering",
                  "A head stands proud at 2.10,0.80",
                  {{"Limit", "every head below the face"}, {"Clears", "set it, then look again"}},
                  {{std::string(64, 'a'), "the proud head", "image/png", kOnePoint},
                   {std::string(64, 'b'), "the same place, after", "", ""}}});
    paper.heading("Stages", 3)
        .add(Table{
            "",
            {{"Part"}, {"Stands"}, {"Who"}, {"When"}},
            {{{"band, edge AB", "signed", "Odo Finch", "3 March 2026, 11:46"},
              {Text().add("Signed by Ada Harrow, 11:20", Weight::struck).add(" opened again: a blister")}}}});
    paper.paragraph(
        Text("Plain, ").add("strong", Weight::strong).add(" and ").add("struck", Weight::struck).add("."));
    paper.add(Listing{{"first", "second"}}).add(Facts{{{"Boards", "plywood, 18 mm"}}});
    paper.add(Photographs{{{std::string(64, 'c'), "corner A", "image/png", kOnePoint}}}).add(PageBreak{});
    paper.add(Signature{"Deck inspected", "Ada Harrow", "roofer", "3 March 2026, 12:05", "own check"});
    paper.add(Signature{"Deck inspected", "Odo Finch", "roofer", "3 March 2026, 11:05", "", Weight::struck});
    paper.add(Signature{"Seen by the customer", ""});
    paper.foot = {{"Falls kill.", "Solvent burns."},
                  "What was done, not a design.",
                  "undersheet 1",
                  std::string(64, '0')};
    return paper;
}

Document hostile_paper(const std::string& name) {
    Document paper;
    paper.head = {name, name, name, name, name, name, name, name, name, name, name};
    paper.add(Verdict{name}).heading(name).heading(name, 3).paragraph(Text(name).add(name, Weight::strong));
    paper.add(Listing{{name}}).add(Facts{{{name, struck(name)}}});
    paper.add(Table{name, {{name}, {name, Column::figures}, {name}}, {{{name, name, name}, {name}}}});
    paper.add(Photographs{{{name, name, name, kOnePoint}, {name, name}}});
    paper.add(Item{name, name, name, {{name, name}}, {{name, name}}});
    paper.add(Signature{name, name, name, name, name}).add(Signature{name, "", name, name, name});
    paper.foot = {{name}, name, name, name};
    return paper;
}

} // namespace undersheet::test
