using ReedClinic.Data.Catalogues;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Web.Features.Catalogues;

/// <summary>What was typed for an entry of the studio’s own, as text.</summary>
public sealed class CatalogueForm
{
    /// <summary>What it is, by name.</summary>
    public string? Kind { get; set; }

    /// <summary>What it is called.</summary>
    public string? Name { get; set; }

    /// <summary>One line for students; for a test, how it is done.</summary>
    public string? Line { get; set; }

    /// <summary>The part of the reed.</summary>
    public string? Zone { get; set; }

    /// <summary>The test by which it shows.</summary>
    public string? SeenBy { get; set; }

    /// <summary>Other signs.</summary>
    public string[] Signs { get; set => field = value ?? []; } = [];

    /// <summary>What to try, in order.</summary>
    public string[] Steps { get; set => field = value ?? []; } = [];

    /// <summary>Whether it can be undone.</summary>
    public string? Undo { get; set; }

    /// <summary>What to be careful of.</summary>
    public string? Caution { get; set; }

    /// <summary>What is right.</summary>
    public string? Right { get; set; }

    /// <summary>What shows when it isn’t right.</summary>
    public string? Shows { get; set; }

    /// <summary>The causes of which that tells.</summary>
    public string[] Causes { get; set => field = value ?? []; } = [];

    /// <summary>The version that the form was opened on.</summary>
    public Guid Version { get; set; }

    /// <summary>Made when the form opened.</summary>
    public Guid Operation { get; set; }

    /// <summary>A form with what stands.</summary>
    /// <param name="entry">The entry.</param>
    public static CatalogueForm Of(StudioEntryView entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        var words = entry.Words;
        return new()
        {
            Kind = entry.Kind.ToString(),
            Name = words.Name,
            Line = words.Line,
            Caution = words.Caution,
            Right = words.Right,
            Shows = words.Shows,
            Version = entry.Version,
        };
    }

    /// <summary>What was typed, for the rules.</summary>
    public StudioEntryWords ToDomain() => new(Read<StudioEntryKind>(Kind), Name, Line)
    {
        Zone = Read<Zone>(Zone),
        SeenBy = new TestCardId(SeenBy ?? ""),
        Signs = [.. Chosen(Signs).Select(sign => new SignId(sign))],
        Steps = [.. Chosen(Steps).Select(step => new AdjustmentKindId(step))],
        Undo = Read<Reversible>(Undo),
        Caution = Caution,
        Right = Right,
        Shows = Shows,
        Causes = [.. Chosen(Causes).Select(cause => new CauseId(cause))],
    };

    private static IEnumerable<string> Chosen(string[] typed) => typed.Where(one => !string.IsNullOrWhiteSpace(one)).Distinct();

    private static T? Read<T>(string? typed)
        where T : struct, Enum => Enum.TryParse<T>(typed, out var value) && Enum.IsDefined(value) && !int.TryParse(typed, out _) ? value : null;
}
