using System.IO.Compression;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using ReedClinic.Data.Privacy;
using ReedClinic.Documents.Letters;
using ReedClinic.Documents.Tables;

namespace ReedClinic.Web.Features.Privacy;

/// <summary>The copy as a file: a zip with what is kept as JSON, the letters as pages and as text, the reeds as a table.</summary>
public static class CopyFile
{
    private static readonly JsonSerializerOptions Readable = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private static readonly string[] Headings =
        ["Batch", "Announced", "Reed", "How to recognise it", "What bothers", "Permission", "Minutes played", "Tied by", "Made", "Tried last", "Used for", "Likes", "Damage"];

    /// <summary>The zip.</summary>
    /// <param name="copy">What is kept.</param>
    /// <param name="now">When it was taken.</param>
    public static byte[] Bytes(PersonCopy copy, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(copy);
        using var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            Add(zip, "about.json", Encoding.UTF8.GetBytes(copy.About.ToJsonString(Readable)), now);
            Add(zip, "reeds.csv", Reeds(copy.Reeds), now);
            foreach (var letter in copy.Letters)
            {
                Add(zip, $"letters/{letter.Letter.Code}.html", Encoding.UTF8.GetBytes(LetterFile.Html(letter.Letter, letter.SentAt)), now);
                Add(zip, $"letters/{letter.Letter.Code}.txt", Encoding.UTF8.GetBytes(LetterFile.Plain(letter.Letter, letter.SentAt)), now);
            }

            Add(zip, "readme.txt", Encoding.UTF8.GetBytes(Readme(now)), now);
        }

        return bytes.ToArray();
    }

    private static void Add(ZipArchive zip, string name, byte[] content, DateTimeOffset now)
    {
        var entry = zip.CreateEntry(name);
        entry.LastWriteTime = now;
        using var into = entry.Open();
        into.Write(content);
    }

    private static byte[] Reeds(IReadOnlyList<ReedInCopy> reeds) => CsvTable.Bytes(Headings, reeds.Select(row => (IReadOnlyList<CsvCell>)
    [
        CsvCell.Text(row.Code.ToString()),
        CsvCell.Text(row.SubmittedAt.UtcDateTime.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)),
        CsvCell.Number(row.Reed.Number),
        CsvCell.Text(row.Reed.HowToRecognise),
        CsvCell.Text(row.Reed.Bothers),
        CsvCell.Text(row.Reed.Permission.ToString()),
        CsvCell.Number(row.Reed.MinutesPlayed),
        CsvCell.Text(row.Reed.TiedBy),
        CsvCell.Text(row.Reed.MadeHow?.ToString()),
        CsvCell.Text(row.Reed.LastTried),
        CsvCell.Text(row.Reed.UsedFor?.ToString()),
        CsvCell.Text(row.Reed.Likes),
        CsvCell.Text(row.Reed.Damage),
    ]));

    private static string Readme(DateTimeOffset now) => string.Join("\r\n",
        "This is a copy of what is kept, taken on " + now.UtcDateTime.ToString("yyyy-MM-dd HH:mm", System.Globalization.CultureInfo.InvariantCulture) + " UTC.",
        "",
        "about.json     every record, area by area; moments are in UTC, pitches are semitones above C and cents, A4 in hertz",
        "letters/       the letters that were sent, as pages for a browser and as plain text",
        "reeds.csv      the reeds, for a spreadsheet",
        "",
        "Photographs and sound clips aren't kept yet, so there are none. Passwords and keys are secrets and stay where they are.",
        "Keep this file as you would keep letters: whoever has it can read it.",
        "");
}
