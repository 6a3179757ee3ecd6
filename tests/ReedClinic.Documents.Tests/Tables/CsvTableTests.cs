using System.Globalization;
using System.Text;
using CsvHelper;
using ReedClinic.Documents.Tables;

namespace ReedClinic.Documents.Tests.Tables;

public sealed class CsvTableTests
{
    // RFC 4180, section 2: rules 1 and 2 (CRLF after each record), 3 (a header), 5 to 7 (quotes) with their own examples.
    [Theory]
    [InlineData(new[] { "aaa", "bbb", "ccc" }, "aaa,bbb,ccc\r\n")]
    [InlineData(new[] { "aaa", "b\r\nbb", "ccc" }, "aaa,\"b\r\nbb\",ccc\r\n")]
    [InlineData(new[] { "aaa", "b\"bb", "ccc" }, "aaa,\"b\"\"bb\",ccc\r\n")]
    [InlineData(new[] { "a,a", "", "c" }, "\"a,a\",,c\r\n")]
    public void The_examples_of_RFC_4180(string[] cells, string line) =>
        Assert.Equal("field_name,field_name,field_name\r\n" + line, Written(["field_name", "field_name", "field_name"], [.. cells.Select(CsvCell.Text)]));

    // OWASP, "CSV Injection": equals, plus, minus, at, tab, carriage return, line feed, and the full-width forms.
    [Theory]
    [InlineData("=1+1")]
    [InlineData("+1+1")]
    [InlineData("-1+1")]
    [InlineData("@SUM(1,1)")]
    [InlineData("\t=1")]
    [InlineData("\r=1")]
    [InlineData("\n=1")]
    [InlineData("\0=1")]
    [InlineData("＝1+1")]
    [InlineData("＋1+1")]
    [InlineData("－1+1")]
    [InlineData("＠SUM(1)")]
    [InlineData(" =1+1")]
    [InlineData("\u200B=1+1")]
    [InlineData("=1+2\";=1+2")]
    [InlineData("=1+2'\" ;,=1+2")]
    public void What_begins_a_formula_gets_a_single_quote_in_front(string text)
    {
        Assert.Equal("'" + text, Read(CsvCell.Text(text)));
        Assert.Equal("'" + text, ReadHeading(text));
    }

    [Theory]
    [InlineData("reed")]
    [InlineData("'reed")]
    [InlineData("1+1=2")]
    [InlineData("\"said\"")]
    [InlineData("שרה")]
    [InlineData("🎶")]
    [InlineData("a\"b,c\nd")]
    public void Any_other_text_is_read_back_as_it_was(string text) => Assert.Equal(text, Read(CsvCell.Text(text)));

    [Fact]
    public void A_number_stays_a_number_and_the_same_as_text_does_not()
    {
        Assert.Equal("n\r\n-1.5\r\n", Written(["n"], [CsvCell.Number(-1.5m)]));
        Assert.Equal("n\r\n\r\n", Written(["n"], [CsvCell.Number(null)]).Replace("\"\"", "", StringComparison.Ordinal));
        Assert.Equal("'-1.5", Read(CsvCell.Text("-1.5")));
    }

    [Fact]
    public void It_says_that_it_is_UTF_8() => Assert.Equal([0xEF, 0xBB, 0xBF, (byte)'n'], CsvTable.Bytes(["n"], [])[..4]);

    [Fact]
    public void No_hostile_text_begins_a_formula_or_breaks_out_of_its_cell() =>
        Assert.All(HostileTexts.All, vector =>
        {
            var sound = Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(vector.Text));
            var cells = ReadAll(CsvTable.Bytes(["a", "b"], [[CsvCell.Text(vector.Text), CsvCell.Text("after")]]))[1];

            Assert.Equal(2, cells.Length);
            Assert.Equal("after", cells[1]);
            Assert.True(cells[0] == sound || cells[0] == "'" + sound, $"{vector} came back changed");
            Assert.DoesNotMatch(@"^[\s\0\u200B\uFEFF]*[=+\-@＝＋－＠]", cells[0]);
        });

    private static string Read(CsvCell cell) => ReadAll(CsvTable.Bytes(["n"], [[cell]]))[1][0];

    private static string ReadHeading(string heading) => ReadAll(CsvTable.Bytes([heading], []))[0][0];

    private static List<string[]> ReadAll(byte[] file)
    {
        using var text = new StreamReader(new MemoryStream(file), Encoding.UTF8);
        using var parser = new CsvParser(text, CultureInfo.InvariantCulture);
        var lines = new List<string[]>();
        while (parser.Read())
        {
            lines.Add(parser.Record!);
        }

        return lines;
    }

    private static string Written(string[] headings, CsvCell[] cells) => Encoding.UTF8.GetString(CsvTable.Bytes(headings, [cells])).TrimStart('\uFEFF');
}
