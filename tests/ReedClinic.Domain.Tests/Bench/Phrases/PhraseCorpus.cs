using System.Globalization;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>One entry as it was labelled, or as it was read: its kind, and its slots as text.</summary>
public sealed record Line(string Kind, IReadOnlyDictionary<string, string> Slots)
{
    public override string ToString() => Kind + string.Concat(Slots.Select(slot => $" {slot.Key}={(slot.Value.Contains(' ', StringComparison.Ordinal) ? $"\"{slot.Value}\"" : slot.Value)}"));
}

/// <summary>A labelled phrase: what was said before, the phrase, and what should be understood.</summary>
public sealed record Labelled(int Number, IReadOnlyList<string> Before, string Phrase, IReadOnlyList<Line> Lines);

/// <summary>Reads a file of labelled phrases; its README.md says how it is written.</summary>
public static class PhraseCorpus
{
    /// <summary>The phrases whose labels are open, from the first line on.</summary>
    public static IReadOnlyList<Labelled> Open { get; } = InFile("open.txt");

    /// <summary>Every phrase that may be looked at, of all files.</summary>
    public static IReadOnlyList<Labelled> All { get; } = [.. Open, .. InFile("sealed.txt"), .. InFile("second-open.txt"), .. InFile("second-sealed.txt"), .. InFile("third-a.txt"), .. InFile("third-b.txt"), .. InFile("third-c.txt"), .. InFile("fourth-e.txt"), .. InFile("fourth-f.txt"), .. InFile("fourth-g.txt"), .. InFile("fourth-h.txt"), .. InFile("fourth-s.txt"), .. InFile("fifth-i.txt"), .. InFile("fifth-j.txt"), .. InFile("fifth-k.txt"), .. InFile("fifth-l.txt"), .. InFile("fifth-s.txt"), .. InFile("sixth-n.txt"), .. InFile("sixth-o.txt"), .. InFile("seventh-p.txt"), .. InFile("seventh-q.txt"), .. InFile("seventh-r.txt"), .. InFile("seventh-s.txt"), .. InFile("seventh-t.txt"), .. InFile("seventh-u.txt"), .. InFile("eighth-x.txt")];

    /// <summary>The phrases of one file beside this one.</summary>
    public static IReadOnlyList<Labelled> InFile(string name) => Read(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Bench", "Phrases", name)));

    public static IReadOnlyList<Labelled> Read(string text)
    {
        List<Labelled> phrases = [];
        foreach (var block in text.ReplaceLineEndings("\n").Split("\n\n", StringSplitOptions.RemoveEmptyEntries))
        {
            var lines = block.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Where(line => line[0] != '#').ToList();
            if (lines.Count == 0)
            {
                continue;
            }

            phrases.Add(new Labelled(
                phrases.Count,
                [.. lines.Where(line => line[0] == '<').Select(line => line[1..].Trim())],
                lines.Single(line => line[0] == '=')[1..].Trim(),
                [.. lines.Where(line => line[0] is not ('<' or '=') && line != "none").Select(LineOf)]));
        }

        return phrases;
    }

    /// <summary>What the reader makes of a labelled phrase, after what was said before it.</summary>
    public static PhraseReading Hear(Labelled labelled) => PhraseReader.Read(labelled.Phrase, Context(labelled.Before));

    /// <summary>The log after these phrases, each read and put in it.</summary>
    public static PhraseContext Context(IEnumerable<string> before) => Context(before, PhraseReader.Read);

    /// <summary>The log after these phrases, each read as is said and put in it.</summary>
    public static PhraseContext Context(IEnumerable<string> before, Func<string, PhraseContext, PhraseReading> read)
    {
        List<BenchEntry> log = [];
        var context = new PhraseContext(BenchLog.Empty, Tuning.Standard);
        foreach (var phrase in before)
        {
            foreach (var entry in read(phrase, context).Entries)
            {
                if (entry.ToEntry(context) is Outcome<BenchEntry>.Done done)
                {
                    log.Add(done.Value.StampedWith(new EntryStamp(
                        new EntryId(Id(log.Count, 1)), new ReedId(Id(1, 2)), log.Count + 1, new OperationId(Id(log.Count, 3)), DateTimeOffset.UnixEpoch, new AccountId(Id(1, 4)))));
                }
            }

            context = context with { Log = BenchLog.Fold(log) };
        }

        return context;
    }

    public static Line LineOf(ReadEntry entry)
    {
        Dictionary<string, string> slots = [];
        foreach (var (name, value) in SlotsOf(entry.Slots))
        {
            if (value is not null)
            {
                slots[name] = Convert.ToString(value, CultureInfo.InvariantCulture)!;
            }
        }

        return new Line(KindOf(entry.Kind), slots);
    }

    private static (string Name, object? Value)[] SlotsOf(ReadSlots s) =>
    [
        ("test", s.Test),
        ("step", s.Step),
        ("pitch", s.Pitch),
        ("lean", s.Lean),
        ("cents", Number(s.Cents)),
        ("octave", s.Octave),
        ("between", s.Between),
        ("change", Number(s.Change)),
        ("length", Number(s.Length)),
        ("kind", s.Kind),
        ("character", s.Character),
        ("zone", s.Zone),
        ("blades", s.Blades),
        ("sides", s.Sides),
        ("relation", s.Relation),
        ("other.zone", s.OtherZone),
        ("other.blades", s.OtherBlades),
        ("other.sides", s.OtherSides),
        ("degree", s.Degree),
        ("certainty", s.Certainty),
        ("known", s.Known),
        ("arose", s.Arose),
        ("ending", s.Ending),
        ("strokes", s.Strokes),
        ("mm", Number(s.Mm)),
        ("words", s.Words),
        ("sake", s.Sake),
        ("outcome", s.Outcome),
        ("verdict", s.Verdict),
    ];

    private static string? Number(decimal? value) => value?.ToString("0.###", CultureInfo.InvariantCulture);

    private static string KindOf(EntryKind kind) => kind == EntryKind.FindingEnded ? "ended" : kind.ToString().ToLowerInvariant();

    private static Line LineOf(string line)
    {
        var space = line.IndexOf(' ', StringComparison.Ordinal);
        Dictionary<string, string> slots = [];
        var at = space < 0 ? line.Length : space + 1;
        while (at < line.Length)
        {
            var equals = line.IndexOf('=', at);
            var quoted = line[equals + 1] == '"';
            var end = line.IndexOf(quoted ? '"' : ' ', equals + (quoted ? 2 : 1));
            end = end < 0 ? line.Length : end;
            slots[line[at..equals]] = line[(equals + (quoted ? 2 : 1))..end];
            at = end + 1;
            while (at < line.Length && line[at] == ' ')
            {
                at++;
            }
        }

        return new Line(space < 0 ? line : line[..space], slots);
    }

    private static Guid Id(int number, byte kind) => new(number, 0, 0, [kind, 0, 0, 0, 0, 0, 0, 0]);
}
