using System.Globalization;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Catalogues;

/// <summary>A catalogue that was read; or why it can’t be.</summary>
/// <param name="Catalogue">The catalogue; null when there are problems.</param>
/// <param name="Problems">What is wrong, with file and line.</param>
public sealed record CatalogueReading(Catalogue? Catalogue, IReadOnlyList<CatalogueProblem> Problems);

/// <summary>Reads the files of a catalogue. Nothing is taken in part: any nonsense is refused, each with its line.</summary>
public sealed class CatalogueReader
{
    private readonly List<CatalogueProblem> problems = [];
    private readonly CatalogueSources sources = new();
    private readonly Dictionary<(CatalogueTable, string), int> lines = [];
    private readonly IReadOnlyDictionary<string, string> files;
    private CatalogueDefaults defaults = new([]);

    private CatalogueReader(IReadOnlyDictionary<string, string> files) => this.files = files;

    /// <summary>The files, without their endings, in the order in which they are read.</summary>
    public static IReadOnlyList<string> Files { get; } = ["sources", "defaults", "tests", "signs", "causes", "links", "adjustments"];

    /// <summary>Reads a catalogue.</summary>
    /// <param name="files">The text of each of <see cref="Files"/>, by its name.</param>
    /// <returns>The catalogue, or what is wrong.</returns>
    public static CatalogueReading Read(IReadOnlyDictionary<string, string> files)
    {
        ArgumentNullException.ThrowIfNull(files);
        var missing = Files.Where(file => !files.ContainsKey(file)).Select(file => new CatalogueProblem(file, 0, "This file is missing.")).ToList();
        return missing.Count > 0 ? new CatalogueReading(null, missing) : new CatalogueReader(files).Read();
    }

    private CatalogueReading Read()
    {
        foreach (var row in Rows("sources", "id", "text"))
        {
            sources.Add(row.Id("id"), row.Text("text"), row);
        }

        defaults = CatalogueDefaults.Read(Rows("defaults", "word", "of", "value", "why"));
        var parts = new CatalogueParts(Tests(), Signs(), Causes(), Links(), Adjustments(), defaults);
        problems.AddRange(sources.NeverNamed().Select(one => new CatalogueProblem("sources", one.Line, $"Nothing names “{one.Id}”.")));
        if (problems.Count == 0)
        {
            problems.AddRange(CatalogueChecks.Of(parts, shipped: true)
                .Select(fault => new CatalogueProblem(FileOf(fault.Table), lines.GetValueOrDefault((fault.Table, fault.Id)), $"{fault.Id}: {fault.Sentence}")));
        }

        return new CatalogueReading(problems.Count == 0 ? new Catalogue(parts) : null, problems);
    }

    private static string FileOf(CatalogueTable table) => table switch
    {
        CatalogueTable.Tests => "tests",
        CatalogueTable.Signs => "signs",
        CatalogueTable.Causes => "causes",
        CatalogueTable.Links => "links",
        _ => "adjustments",
    };

    private List<TableRow> Rows(string file, params string[] columns) => TableRow.Read(file, files[file], columns, sources, problems);

    /// <summary>The row’s id, which no other row may have.</summary>
    private string Own(CatalogueTable table, TableRow row, string id)
    {
        if (!lines.TryAdd((table, id), row.Line))
        {
            row.Say($"“{id}” stands here a second time.");
        }

        return id;
    }

    private List<TestCard> Tests() =>
    [
        .. Rows("tests", "id", "name", "how", "right", "otherwise", "bench", "mark").Select(row => new TestCard(
            new TestCardId(Own(CatalogueTable.Tests, row, row.Id("id"))), row.Text("name"), row.Text("how"), row.Text("right"), row.Text("otherwise"),
            row.Maybe("bench") is { } bench ? Named<TestKind>(row, bench) : null, row.Mark("mark"))),
    ];

    private List<Sign> Signs() =>
    [
        .. Rows("signs", "id", "name", "test", "known-by", "opposite", "unasked").Select(row =>
        {
            var id = Own(CatalogueTable.Signs, row, row.Id("id"));
            return new Sign(
                new SignId(id), FindingsWord(row, "name", id, kind => kind.Name), new TestCardId(row.Id("test")), Routes(row),
                row.Maybe("opposite") is { } opposite ? new SignId(opposite) : null, Word(row, "unasked", "unasked"));
        }),
    ];

    private List<Cause> Causes() =>
    [
        .. Rows("causes", "id", "name", "finding", "line", "mark", "prior", "steps", "steps-mark", "never-first").Select(row =>
        {
            var finding = row.Maybe("finding");
            return new Cause(
                new CauseId(Own(CatalogueTable.Causes, row, row.Id("id"))), FindingsWord(row, "name", finding, kind => kind.Name),
                finding is null ? null : FindingOf(row, finding)?.Id, FindingsWord(row, "line", finding, kind => kind.ForStudent), row.Mark("mark"),
                Word(row, "prior", "prior"), Adjusting(row, "steps"), row.Mark("steps-mark"), Adjusting(row, "never-first"));
        }),
    ];

    private List<CauseLink> Links() =>
    [
        .. Rows("links", "cause", "sign", "strength", "mark").Select(row =>
        {
            var strength = Word(row, "strength", "strength");
            var belonging = row.Text("strength").Split(' ')[0] switch { "itself" => Belonging.Itself, "typical" => Belonging.Typical, "behind" => Belonging.Behind, _ => Belonging.Possible };
            var link = new CauseLink(new CauseId(row.Id("cause")), new SignId(row.Id("sign")), belonging, strength, row.Mark("mark"));
            Own(CatalogueTable.Links, row, CatalogueChecks.NameOf(link));
            return link;
        }),
    ];

    private List<AdjustmentEntry> Adjustments() =>
    [
        .. Rows("adjustments", ["id", "name", "zone", "undo", "amount", "caution", "mark", "does", "risk", .. EffectColumns, "offer", "not-while", "unless"])
            .Select(row =>
            {
                var id = new AdjustmentKindId(Own(CatalogueTable.Adjustments, row, row.Id("id")));
                var effects = EffectColumns.Select((column, at) => ((EffectScale)at, row.Marked(column, ReadRange, default(EffectRange), "a range from -2 to +2")))
                    .ToDictionary(pair => pair.Item1, pair => pair.Item2);
                var kind = Linked(row, id) ?? Written(row, id);
                return new AdjustmentEntry(
                    id, kind.Name, kind.Zone, kind.Reversible, kind.UsualAmount, kind.Caution, kind.Mark, row.Text("does"),
                    row.Marked<int>("risk", text => text.Length == 1 && text[0] is >= '0' and <= '5' ? text[0] - '0' : null, 0, "a risk from 0 to 5"), effects,
                    row.Marked<bool>("offer", text => text switch { "by-choice" => true, "offered" => false, _ => null }, true, "“offered” or “by-choice”"),
                    [.. row.Several("not-while").Select(sign => new SignId(sign))], [.. row.Several("unless").Select(sign => new SignId(sign))]);
            }),
    ];

    private static string[] EffectColumns { get; } = ["pitch", "opening", "effort", "response", "tone", "steadiness"];

    private static AdjustmentKind? Linked(TableRow row, AdjustmentKindId id)
    {
        var own = new[] { "name", "zone", "undo", "amount", "caution", "mark" };
        if (own.All(column => row.Maybe(column) != "="))
        {
            return null;
        }

        var kind = AdjustmentCatalogue.Find(id);
        if (kind is null || own.Any(column => row.Maybe(column) != "="))
        {
            row.Say("From name to mark, either all say “=” and the bench log has this adjustment, or none does.");
        }

        return kind ?? new AdjustmentKind(id, id.Value, id.Value, Zone.WholeReed, Reversible.No, null, "-", EvidenceMark.OwnDefault);
    }

    private static AdjustmentKind Written(TableRow row, AdjustmentKindId id) => new(
        id, row.Text("name"), row.Text("name"), Named<Zone>(row, row.Text("zone")) ?? Zone.WholeReed, Named<Reversible>(row, row.Text("undo")) ?? Reversible.No,
        row.Maybe("amount"), row.Text("caution"), row.Mark("mark"));

    private Marked<double> Word(TableRow row, string column, string of) =>
        row.Marked<double>(column, word => defaults.Of(of, word)?.Value, 0.5, "one of the words for it in defaults.tsv");

    private static IReadOnlyList<AdjustmentKindId> Adjusting(TableRow row, string column) => [.. row.Several(column).Select(id => new AdjustmentKindId(id))];

    private static List<SignRoute> Routes(TableRow row)
    {
        List<SignRoute> routes = [];
        foreach (var text in row.Several("known-by"))
        {
            if (SignRoute.Read(text) is { } route)
            {
                routes.Add(route);
            }
            else
            {
                row.Say($"“{text}” is nothing that the records tell.");
            }
        }

        return routes;
    }

    private static string FindingsWord(TableRow row, string column, string? finding, Func<FindingKind, string> word)
    {
        var text = row.Text(column);
        return text != "=" ? text : finding is not null && FindingOf(row, finding) is { } kind ? word(kind) : text;
    }

    private static FindingKind? FindingOf(TableRow row, string id)
    {
        var kind = FindingCatalogue.Find(new FindingKindId(id));
        if (kind is null)
        {
            row.Say($"There is no finding “{id}”.");
        }

        return kind;
    }

    /// <summary>A name of the code’s own, written in either way: <c>SoftestStart</c> or <c>softest-start</c>.</summary>
    private static T? Named<T>(TableRow row, string text)
        where T : struct, Enum
    {
        if (Enum.TryParse<T>(text.Replace("-", string.Empty, StringComparison.Ordinal), ignoreCase: true, out var value) && Enum.IsDefined(value))
        {
            return value;
        }

        row.Say($"“{text}” is none of {string.Join(", ", Enum.GetNames<T>())}.");
        return null;
    }

    private static EffectRange? ReadRange(string text)
    {
        var ends = text.Split("..");
        int? End(string end) => int.TryParse(end, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value)
            && Math.Abs(value) <= EffectRange.Furthest ? value : null;
        return ends.Length <= 2 && End(ends[0]) is { } low && End(ends[^1]) is { } high && low <= high ? new EffectRange(low, high) : null;
    }
}
