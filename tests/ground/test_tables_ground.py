"""Tables and lines of text, as a page and as print."""

from liftcalc.tables import Folded, FoldedTable, Table


def test_what_is_folded_in_a_page_is_open_in_print():
    answers = Folded("Answers", "1. 45 pph <come> back.", "2. No.")
    assert repr(answers) == "Answers\n1. 45 pph <come> back.\n2. No."
    html = answers._repr_html_()
    assert html.startswith("<details><summary>Answers</summary>"), "closed: no attribute opens it"
    assert "1. 45 pph &lt;come&gt; back." in html


def test_a_table_that_starts_folded_has_its_caption_once():
    table = FoldedTable("Controls <of> it", ("a", "b"), [("1", "2")])
    html = table._repr_html_()
    assert html.startswith(
        '<details><summary>Controls &lt;of&gt; it</summary><table aria-label="Controls &lt;of&gt; it">'
    )
    assert "<caption" not in html
    assert "<td" in html
    assert str(table) == str(Table("Controls <of> it", ("a", "b"), [("1", "2")])), "print has all of it"
