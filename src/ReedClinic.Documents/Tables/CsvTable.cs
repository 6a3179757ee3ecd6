using System.Buffers;
using System.Globalization;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;

namespace ReedClinic.Documents.Tables;

/// <summary>
/// A table as comma-separated values: quoted by RFC 4180, in UTF-8 with a byte order mark, so that a spreadsheet reads its
/// letters aright. A text that a spreadsheet would take for a formula gets a single quote in front.
/// </summary>
public static class CsvTable
{
    // OWASP's list of what begins a formula, its full-width forms included; a NUL or a space before it must not hide it.
    private static readonly char[] Formula = ['=', '+', '-', '@', '\t', '\r', '\n', '\0', '＝', '＋', '－', '＠', ' ', '\u00A0', '\u200B', '\uFEFF'];

    private static readonly SearchValues<char> Quoted = SearchValues.Create("\",\r\n\0");

    private static readonly UTF8Encoding WithMark = new(encoderShouldEmitUTF8Identifier: true);

    /// <summary>Writes a table.</summary>
    /// <param name="headings">The first line.</param>
    /// <param name="rows">The lines after it.</param>
    /// <returns>The file.</returns>
    public static byte[] Bytes(IReadOnlyList<string> headings, IEnumerable<IReadOnlyList<CsvCell>> rows)
    {
        ArgumentNullException.ThrowIfNull(headings);
        ArgumentNullException.ThrowIfNull(rows);
        using var bytes = new MemoryStream();
        using (var text = new StreamWriter(bytes, WithMark, leaveOpen: true))
        using (var writer = new Writer(text))
        {
            writer.Line(headings.Select(CsvCell.Text));
            foreach (var row in rows)
            {
                writer.Line(row);
            }
        }

        return bytes.ToArray();
    }

    private sealed class Writer(TextWriter text) : CsvWriter(text, new CsvConfiguration(CultureInfo.InvariantCulture)
    {
        NewLine = "\r\n",

        // CsvHelper looks for its own line ending alone; other readers end a record at a lone line feed too.
        ShouldQuote = cell => cell.Field?.AsSpan().ContainsAny(Quoted) == true,
        InjectionOptions = InjectionOptions.Escape,
        InjectionCharacters = Formula,
        InjectionEscapeCharacter = '\'',
    })
    {
        private bool _isNumber;

        public void Line(IEnumerable<CsvCell> cells)
        {
            foreach (var cell in cells)
            {
                _isNumber = cell.IsNumber;
                WriteField(cell.Written);
            }

            NextRecord();
        }

        protected override string? SanitizeForInjection(string? field) => _isNumber ? field : base.SanitizeForInjection(field);
    }
}
