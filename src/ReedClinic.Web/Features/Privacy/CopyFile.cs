using System.IO.Compression;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using ReedClinic.Data.Letters;
using ReedClinic.Data.Privacy;
using ReedClinic.Data.TeachingNotes;
using ReedClinic.Documents.Letters;
using ReedClinic.Documents.Tables;
using ReedClinic.Web.Features.Letters;

namespace ReedClinic.Web.Features.Privacy;

/// <summary>The copy as a file: a zip with what is kept as JSON, the letters as PDFs, as pages and as text, the reeds as a table.</summary>
public static class CopyFile
{
    private static readonly JsonSerializerOptions Readable = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private static readonly string[] Headings =
        ["Batch", "Sent on", "Number of the reed", "How to recognise it", "What bothers about it", "What we may do", "Minutes played", "Who tied it", "How it was made", "What was tried last", "What it is for", "What is good about it", "Damage when it came"];

    /// <summary>Writes the zip as it is made: sounds and photographs may be many, and are never all in memory.</summary>
    /// <param name="into">Where to.</param>
    /// <param name="copy">What is kept.</param>
    /// <param name="now">When it was taken.</param>
    /// <param name="zone">The studio's zone, for the days of letters and batches.</param>
    /// <param name="ct">Stops it.</param>
    public static async Task WriteAsync(Stream into, PersonCopy copy, DateTimeOffset now, TimeZoneInfo zone, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(copy);
        ArgumentNullException.ThrowIfNull(zone);
        var zip = await ZipArchive.CreateAsync(into, ZipArchiveMode.Create, leaveOpen: true, entryNameEncoding: null, ct).ConfigureAwait(false);
        await using var _ = zip.ConfigureAwait(false);
        List<NotePictureFile> pictures = [.. copy.Letters.SelectMany(letter => letter.Pictures).DistinctBy(picture => picture.Key)];
        var names = pictures.ToDictionary(picture => picture.Key, picture => "pictures/" + picture.FileName);
        List<(string Name, byte[] Content)> small =
        [
            ("about.json", Encoding.UTF8.GetBytes(copy.About.ToJsonString(Readable))),
            ("reeds.csv", Reeds(copy.Reeds, zone)),
            .. copy.Letters.Select(letter => (LetterName(letter, "html"), Encoding.UTF8.GetBytes(LetterFile.Html(letter.Letter, Day(letter.SentAt, zone), SentLetterFile.Among(letter, zone), names, SentLetterFile.Name(letter))))),
            .. copy.Letters.Select(letter => (LetterName(letter, "txt"), Encoding.UTF8.GetBytes(LetterFile.Plain(letter.Letter, Day(letter.SentAt, zone), SentLetterFile.Among(letter, zone))))),
        ];
        foreach (var (name, content) in small)
        {
            using var bytes = new MemoryStream(content);
            await AddAsync(zip, name, bytes, now, ct).ConfigureAwait(false);
        }

        await AddLettersAsync(zip, copy.Letters, zone, now, ct).ConfigureAwait(false);
        List<string> gone = [];
        foreach (var picture in pictures)
        {
            await AddAsync(zip, "letters/" + names[picture.Key], picture.Path, now, ct).ConfigureAwait(false);
        }

        foreach (var file in copy.Files)
        {
            var name = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"recordings/{file.Code}/reed-{file.Number}/{file.Name}");
            if (!await AddAsync(zip, name, file.Path, now, ct).ConfigureAwait(false))
            {
                gone.Add(name);
            }
        }

        using var readme = new MemoryStream(Encoding.UTF8.GetBytes(Readme(TimeZoneInfo.ConvertTime(now, zone), copy, gone)));
        await AddAsync(zip, "readme.txt", readme, now, ct).ConfigureAwait(false); // last: only now is it known what was there
    }

    private static async Task AddLettersAsync(ZipArchive zip, IReadOnlyList<SentLetter> letters, TimeZoneInfo zone, DateTimeOffset now, CancellationToken ct)
    {
        foreach (var letter in letters)
        {
            using var bytes = new MemoryStream(SentLetterFile.Pdf(letter, zone));
            await AddAsync(zip, $"letters/{SentLetterFile.Name(letter)}", bytes, now, ct).ConfigureAwait(false);
        }
    }

    // What was sent before a correction stands beside what was sent last.
    private static string LetterName(SentLetter letter, string ending) => letter.ReplacedAt is null
        ? $"letters/{letter.Letter.Code}.{ending}"
        : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"letters/{letter.Letter.Code}-sent-{letter.Ordinal}.{ending}");

    private static DateTimeOffset Day(DateTimeOffset at, TimeZoneInfo zone) => TimeZoneInfo.ConvertTime(at, zone);

    // A sound may be removed while the copy is on its way; the rest of the copy is still whole.
    private static async Task<bool> AddAsync(ZipArchive zip, string name, string path, DateTimeOffset now, CancellationToken ct)
    {
        try
        {
            var bytes = File.OpenRead(path);
            await using var _ = bytes.ConfigureAwait(false);
            await AddAsync(zip, name, bytes, now, ct).ConfigureAwait(false);
            return true;
        }
        catch (Exception gone) when (gone is FileNotFoundException or DirectoryNotFoundException)
        {
            return false;
        }
    }

    private static async Task AddAsync(ZipArchive zip, string name, Stream content, DateTimeOffset now, CancellationToken ct)
    {
        var entry = zip.CreateEntry(name);
        entry.LastWriteTime = now;
        var into = await entry.OpenAsync(ct).ConfigureAwait(false);
        await using var _ = into.ConfigureAwait(false);
        await content.CopyToAsync(into, ct).ConfigureAwait(false);
    }

    private static byte[] Reeds(IReadOnlyList<ReedInCopy> reeds, TimeZoneInfo zone) => CsvTable.Bytes(Headings, reeds.Select(row => (IReadOnlyList<CsvCell>)
    [
        CsvCell.Text(row.Code.ToString()),
        CsvCell.Text(TimeZoneInfo.ConvertTime(row.SubmittedAt, zone).ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)),
        CsvCell.Number(row.Reed.Number),
        CsvCell.Text(row.Reed.HowToRecognise),
        CsvCell.Text(row.Reed.Bothers),
        CsvCell.Text(CopyWords.Of(row.Reed.Permission)),
        CsvCell.Number(row.Reed.MinutesPlayed),
        CsvCell.Text(row.Reed.TiedBy),
        CsvCell.Text(CopyWords.Of(row.Reed.MadeHow)),
        CsvCell.Text(row.Reed.LastTried),
        CsvCell.Text(CopyWords.Of(row.Reed.UsedFor)),
        CsvCell.Text(row.Reed.Likes),
        CsvCell.Text(row.Reed.Damage),
    ]));

    // Only what is in it.
    private static string[] Told(bool isThere, string line) => isThere ? [line] : [];

    private static string Readme(DateTimeOffset there, PersonCopy copy, List<string> gone) => string.Join("\r\n",
    [
        "This is a copy of what is kept, taken on " + there.ToString("yyyy-MM-dd HH:mm", System.Globalization.CultureInfo.InvariantCulture) + " by the studio’s clock.",
        "",
        "about.json     every record, area by area; moments are in UTC (days elsewhere are the studio’s), pitches are semitones above C and cents, A4 in hertz",
        "reeds.csv      the reeds, for a spreadsheet",
        .. Told(copy.Letters.Count > 0, "letters/       the letters that were sent: as PDFs for printing (letter-….pdf), as pages for a browser (….html) and as plain text (….txt)"),
        .. Told(copy.Files.Count > gone.Count, "recordings/    the sounds and photographs of the reeds, as far as they are the student’s to hear and see"),
        "",
        .. gone.Count == 0 ? Array.Empty<string>() : ["These were removed while the copy was made, and aren't in it:", .. gone.Select(name => "  " + name), ""],
        "Passwords and keys are secrets and stay where they are.",
        "Keep this file as you would keep letters: whoever has it can read it.",
        "",
    ]);
}
