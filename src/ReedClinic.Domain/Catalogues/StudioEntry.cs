using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Catalogues;

/// <summary>
/// An entry that the owner added to the catalogue. Its names may be told better and it may be retired; what it is, and what it rests on,
/// stays, so that what was noted under it keeps its sense. It is never deleted.
/// </summary>
public sealed class StudioEntry
{
    /// <summary>The most entries that a studio may have, retired ones included.</summary>
    public const int Most = 200;

    /// <summary>The longest name, in characters.</summary>
    public const int LongestName = 60;

    /// <summary>The longest sentence, in characters.</summary>
    public const int LongestLine = 160;

    /// <summary>The most signs, steps or causes that one entry names.</summary>
    public const int MostChosen = 12;

    private const char Between = ' ';

    // For the database, which sets every property.
    private StudioEntry()
    {
    }

    /// <summary>Its id.</summary>
    public StudioEntryId Id { get; private init; }

    /// <summary>Its lasting name in logs and sheets, from <see cref="OwnId"/>.</summary>
    public string Key { get; private init; } = "";

    /// <summary>What it is.</summary>
    public StudioEntryKind Kind { get; private init; }

    /// <summary>What it is called.</summary>
    public string Name { get; private set; } = "";

    /// <summary>One line for students; for a test, how it is done.</summary>
    public string Line { get; private set; } = "";

    /// <summary>The part of the reed.</summary>
    public Zone Zone { get; private init; }

    /// <summary>For a fault: the lasting name of the test by which it shows.</summary>
    public string? SeenBy { get; private init; }

    /// <summary>For a fault: the lasting names of its other signs, with a space between them.</summary>
    public string? ShownIn { get; private init; }

    /// <summary>For a fault: the lasting names of what to try, in order, with a space between them.</summary>
    public string? ToTry { get; private init; }

    /// <summary>For an adjustment: whether it can be undone.</summary>
    public Reversible? Undo { get; private init; }

    /// <summary>For an adjustment: a sentence of caution.</summary>
    public string? Caution { get; private set; }

    /// <summary>For a test: what is right.</summary>
    public string? Right { get; private set; }

    /// <summary>For a test: what shows when it isn’t right.</summary>
    public string? Shows { get; private set; }

    /// <summary>For a test: the lasting names of the causes of which that tells, with a space between them.</summary>
    public string? TellsOf { get; private init; }

    /// <summary>Who added it; an id that leads nowhere once that account is erased.</summary>
    public AccountId MadeBy { get; private init; }

    /// <summary>When it was last changed.</summary>
    public DateTimeOffset ChangedAt { get; private set; }

    /// <summary>Since when it isn’t offered any more; null while it is.</summary>
    public DateTimeOffset? RetiredAt { get; private set; }

    /// <summary>Changes with every save.</summary>
    public Guid Version { get; private set; }

    /// <summary>The other signs of a fault.</summary>
    public IReadOnlyList<SignId> Signs => [.. Split(ShownIn).Select(name => new SignId(name))];

    /// <summary>What to try against a fault.</summary>
    public IReadOnlyList<AdjustmentKindId> Steps => [.. Split(ToTry).Select(name => new AdjustmentKindId(name))];

    /// <summary>The causes of which a test tells.</summary>
    public IReadOnlyList<CauseId> Causes => [.. Split(TellsOf).Select(name => new CauseId(name))];

    /// <summary>What a finding of it is called at the bench: the fault itself, or what the test shows; null for an adjustment.</summary>
    public string? Found => Kind switch { StudioEntryKind.Fault => Name, StudioEntryKind.Test => Shows, _ => null };

    /// <summary>Makes an entry.</summary>
    /// <param name="id">Its id.</param>
    /// <param name="words">What was typed.</param>
    /// <param name="here">The studio’s entries so far, retired ones included.</param>
    /// <param name="by">Who adds it.</param>
    /// <param name="now">When.</param>
    /// <returns>The entry, or what is wrong with what was typed, each beside its field.</returns>
    public static Outcome<StudioEntry> Of(
        StudioEntryId id, StudioEntryWords words, IReadOnlyList<StudioEntry> here, AccountId by, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(words);
        ArgumentNullException.ThrowIfNull(here);
        var reading = new StudioEntryReading(words, StudioCatalogue.Of(here));
        var (name, line) = reading.Name(null);
        var (caution, right, shows) = reading.More(null);
        reading.Choices();
        if (reading.Problems.Count > 0)
        {
            return new Outcome<StudioEntry>.Refused(reading.Problems);
        }

        var kind = words.Kind!.Value;
        return new Outcome<StudioEntry>.Done(new StudioEntry
        {
            Id = id,
            Key = KeyOf(kind, id.Value, words.Undo),
            Kind = kind,
            Name = name!,
            Line = line!,
            Zone = words.Zone ?? Zone.WholeReed,
            SeenBy = kind == StudioEntryKind.Fault ? words.SeenBy.Value : null,
            ShownIn = kind == StudioEntryKind.Fault ? Join(words.Signs.Select(sign => sign.Value)) : null,
            ToTry = kind == StudioEntryKind.Fault ? Join(words.Steps.Select(step => step.Value)) : null,
            Undo = kind == StudioEntryKind.Adjustment ? words.Undo : null,
            Caution = caution,
            Right = right,
            Shows = shows,
            TellsOf = kind == StudioEntryKind.Test ? Join(words.Causes.Select(cause => cause.Value)) : null,
            MadeBy = by,
            ChangedAt = now,
        });
    }

    /// <summary>Tells its names and sentences better; what it rests on stays. The same words again change nothing.</summary>
    /// <param name="words">What was typed.</param>
    /// <param name="here">The studio’s entries, this one among them.</param>
    /// <param name="now">When.</param>
    /// <returns>What can’t be taken, beside its field; empty when it was taken.</returns>
    public IReadOnlyList<Problem> Rename(StudioEntryWords words, IReadOnlyList<StudioEntry> here, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(words);
        ArgumentNullException.ThrowIfNull(here);
        var reading = new StudioEntryReading(words with { Kind = Kind }, StudioCatalogue.Of([.. here.Where(one => one.Id != Id)]), Found ?? Name);
        var (name, line) = reading.Name(RetiredAt);
        var (caution, right, shows) = reading.More(RetiredAt);
        if (reading.Problems.Count == 0 && (name, line, caution, right, shows) != (Name, Line, Caution, Right, Shows))
        {
            (Name, Line, Caution, Right, Shows) = (name!, line!, caution, right, shows);
            ChangedAt = now;
        }

        return reading.Problems;
    }

    /// <summary>Offers it no more. Logs, sheets and letters that have it keep it.</summary>
    /// <param name="now">When.</param>
    public void Retire(DateTimeOffset now) => RetiredAt ??= now;

    /// <summary>Offers it again.</summary>
    /// <param name="here">The studio’s entries, this one among them.</param>
    /// <returns>What keeps it retired: by now something else is called so.</returns>
    public IReadOnlyList<Problem> BringBack(IReadOnlyList<StudioEntry> here)
    {
        ArgumentNullException.ThrowIfNull(here);
        var reading = new StudioEntryReading(
            new StudioEntryWords(Kind, Name, Line) { Caution = Caution, Right = Right, Shows = Shows }, StudioCatalogue.Of([.. here.Where(one => one.Id != Id)]), Found ?? Name);
        reading.Name(null);
        reading.More(null);
        if (reading.Problems.Count == 0)
        {
            RetiredAt = null;
        }

        return reading.Problems;
    }

    private static string KeyOf(StudioEntryKind kind, Guid id, Reversible? undo) => kind switch
    {
        StudioEntryKind.Fault => OwnId.OfFault(id),
        StudioEntryKind.Test => OwnId.OfTest(id),
        _ => OwnId.OfAdjustment(id, undo!.Value),
    };

    private static string Join(IEnumerable<string> names) => string.Join(Between, names.Distinct());

    private static string[] Split(string? names) => names?.Split(Between, StringSplitOptions.RemoveEmptyEntries) ?? [];
}
