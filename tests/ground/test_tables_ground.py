"""Tables and lines of text, as a page and as print."""

from liftcalc.tables import Folded


def test_what_is_folded_in_a_page_is_open_in_print():
    answers = Folded("Answers", "1. 45 pph <come> back.", "2. No.")
    assert repr(answers) == "Answers\n1. 45 pph <come> back.\n2. No."
    html = answers._repr_html_()
    assert html.startswith("<details><summary>Answers</summary>"), "closed: no attribute opens it"
    assert "1. 45 pph &lt;come&gt; back." in html
