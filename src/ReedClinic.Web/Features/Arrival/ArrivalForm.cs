using System.Globalization;
using ReedClinic.Data.Intake;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Web.Features.Arrival;

/// <summary>What was noted when a parcel was opened, as it was typed and ticked.</summary>
public sealed class ArrivalForm
{
    /// <summary>The step that adds an unannounced reed and leaves the rest of the form as it was typed.</summary>
    public const string OnlyTheExtra = "extra";

    private const string Without = "without-";

    /// <summary>What was pressed: nothing for saving all of it.</summary>
    public string? Step { get; set; }

    /// <summary>The version of the batch that was read when the form opened.</summary>
    public Guid Version { get; set; }

    /// <summary>Made when the form opened; sending it twice is the same as once.</summary>
    public Guid Operation { get; set; }

    /// <summary>About the parcel as a whole.</summary>
    public string? Note { get; set; }

    /// <summary>Whether the letter tells the note.</summary>
    public bool NoteInLetter { get; set; }

    /// <summary>The reeds, by the number on the tag.</summary>
    public Dictionary<int, ReedArrivalForm> Reeds { get; set; } = [];

    /// <summary>What was typed of a reed that nobody announced.</summary>
    public ExtraForm? Extra { get; set; }

    /// <summary>Removes one that was added by mistake; made when the form opened.</summary>
    public Guid? Removal { get; set; }

    /// <summary>The unannounced reed that is to be added: asked for, or described when all is saved. Null where there is none.</summary>
    internal ExtraForm? ExtraToAdd => Step == OnlyTheExtra || (SavesAll && !string.IsNullOrWhiteSpace(Extra?.HowToRecognise)) ? Extra : null;

    /// <summary>Whether all of it is to be saved.</summary>
    internal bool SavesAll => string.IsNullOrEmpty(Step);

    /// <summary>What stands on record, ready to be changed.</summary>
    /// <param name="batch">The batch.</param>
    /// <returns>A form without an operation: the page gives it one.</returns>
    public static ArrivalForm Of(Batch batch) => new()
    {
        Version = batch.Version,
        Note = batch.ArrivalNote,
        NoteInLetter = batch.ArrivalNoteInLetter,
        Reeds = batch.Reeds.ToDictionary(reed => reed.Number, ReedArrivalForm.Of),
    };

    /// <summary>
    /// The step that removes an unannounced reed and leaves the rest of the form as it was typed. Its number is only told: another
    /// reed may have come to it in the meantime.
    /// </summary>
    /// <param name="reed">The reed.</param>
    public static string Removing(Reed reed)
    {
        ArgumentNullException.ThrowIfNull(reed);
        return FormattableString.Invariant($"{Without}{reed.Number}-{reed.Id.Value:N}");
    }

    /// <summary>The unannounced reed that is to be removed, and the number it had when the form opened; null where none is.</summary>
    internal (ReedId Reed, int Number)? ToRemove => Step?.StartsWith(Without, StringComparison.Ordinal) == true
        && Step[Without.Length..].Split('-') is [var number, var id]
        && int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var told) && Guid.TryParseExact(id, "N", out var reed)
        ? (new ReedId(reed), told)
        : null;

    /// <summary>
    /// Goes on with the batch that an unannounced reed was added to or removed from, also where the form is sent once more. What
    /// somebody else noted in the meantime still clashes.
    /// </summary>
    /// <param name="operation">What added or removed it.</param>
    /// <param name="now">The batch after it.</param>
    internal void WentOn(OperationId operation, Batch now)
    {
        Version = now.Version == operation.VersionAfter(Version) ? now.Version : Version;
        Extra = Step == OnlyTheExtra || SavesAll ? null : Extra;
        Removal = null;
        foreach (var number in Reeds.Keys.Except(now.Reeds.Select(reed => reed.Number)).ToList())
        {
            Reeds.Remove(number);
        }
    }

    /// <summary>What was noted of a reed without saying whether it is in the parcel at all, or nothing noted of any.</summary>
    /// <param name="batch">The batch that the form is about.</param>
    /// <param name="unsaid">What to say beside the choice of a reed with this number.</param>
    /// <param name="nothing">What to say when the form says nothing that isn't on record.</param>
    /// <returns>A problem for each such reed, or one for the whole form.</returns>
    public IEnumerable<Problem> Check(Batch batch, Func<int, string> unsaid, string nothing)
    {
        ArgumentNullException.ThrowIfNull(batch);
        ArgumentNullException.ThrowIfNull(unsaid);
        if (batch.ArrivedAt is null && string.IsNullOrWhiteSpace(Note) && Reeds.Values.All(reed => reed is { HasNoPresence: true, HasAnything: false }))
        {
            return [new Problem("", nothing)];
        }

        return batch.Reeds
            .Where(reed => reed.Presence != Presence.Extra && Reeds.GetValueOrDefault(reed.Number) is { HasNoPresence: true, HasAnything: true })
            .Select(reed => new Problem(FormattableString.Invariant($"Form.Reeds[{reed.Number}].Presence"), unsaid(reed.Number)));
    }

    /// <summary>What was seen; reeds that nobody ticked stay as they are.</summary>
    /// <param name="batch">The batch that the form is about.</param>
    /// <returns>What the book takes.</returns>
    public SeenParcel ToDomain(Batch batch)
    {
        var seen = new Dictionary<ReedId, ReedArrival>();
        foreach (var reed in batch.Reeds)
        {
            if (Reeds.TryGetValue(reed.Number, out var typed) && typed.ToDomain(reed) is { } arrival)
            {
                seen[reed.Id] = arrival;
            }
        }

        return new SeenParcel(seen, Note) { NoteInLetter = NoteInLetter };
    }
}

/// <summary>What was noted of one reed, as it was typed and ticked.</summary>
public sealed class ReedArrivalForm
{
    /// <summary>In the parcel or not.</summary>
    public string? Presence { get; set; }

    /// <summary>Whether it may be handled.</summary>
    public string? Fitness { get; set; }

    /// <summary>How the upper blade is told.</summary>
    public string? UpperMark { get; set; }

    /// <summary>The winding hand.</summary>
    public string? Winding { get; set; }

    /// <summary>Which way the blades overlap.</summary>
    public string? Overlap { get; set; }

    /// <summary>Whether the two go together.</summary>
    public string? OverlapAgrees { get; set; }

    /// <summary>What is damaged.</summary>
    public string? Damage { get; set; }

    internal bool HasNoPresence => string.IsNullOrEmpty(Presence);

    internal bool HasAnything =>
        Chosen<Fitness>(Fitness) is not null
        || !string.IsNullOrWhiteSpace(UpperMark)
        || !string.IsNullOrWhiteSpace(Damage)
        || (Chosen<WindingHand>(Winding) ?? WindingHand.NotRead) != WindingHand.NotRead
        || (Chosen<Overlap>(Overlap) ?? Domain.Intake.Overlap.NotRead) != Domain.Intake.Overlap.NotRead;

    /// <summary>What stands on record of one reed.</summary>
    /// <param name="reed">The reed.</param>
    /// <returns>A form; empty where nothing was noted.</returns>
    public static ReedArrivalForm Of(Reed reed) => new()
    {
        Presence = reed.Presence == Domain.Intake.Presence.Expected ? null : reed.Presence.ToString(),
        Fitness = reed.Fitness?.ToString(),
        UpperMark = reed.UpperMark,
        Winding = reed.Winding.ToString(),
        Overlap = reed.Overlap.ToString(),
        OverlapAgrees = reed.OverlapAgrees?.ToString(CultureInfo.InvariantCulture),
        Damage = reed.Damage,
    };

    /// <summary>What was seen of the reed, or null when nobody said whether it is here.</summary>
    /// <param name="reed">The reed.</param>
    /// <returns>What the book takes.</returns>
    public ReedArrival? ToDomain(Reed reed)
    {
        ArgumentNullException.ThrowIfNull(reed);
        var presence = reed.Presence == Domain.Intake.Presence.Extra
            ? Domain.Intake.Presence.Extra
            : Chosen<Presence>(Presence) ?? Domain.Intake.Presence.Expected;
        if (presence == Domain.Intake.Presence.Missing)
        {
            return new ReedArrival(presence);
        }

        return presence == Domain.Intake.Presence.Expected
            ? null
            : new ReedArrival(
                presence,
                UpperMark,
                Chosen<WindingHand>(Winding) ?? WindingHand.NotRead,
                Chosen<Overlap>(Overlap) ?? Domain.Intake.Overlap.NotRead,
                bool.TryParse(OverlapAgrees, out var agrees) ? agrees : null,
                Damage,
                Chosen<Fitness>(Fitness));
    }

    private static T? Chosen<T>(string? sent)
        where T : struct, Enum =>
        Enum.TryParse<T>(sent, ignoreCase: false, out var value) && Enum.IsDefined(value) ? value : null;
}

/// <summary>What was typed of a reed that nobody announced.</summary>
public sealed class ExtraForm
{
    /// <summary>Made when the form opened; sending it twice is the same as once.</summary>
    public Guid Operation { get; set; }

    /// <summary>How to tell it from the others.</summary>
    public string? HowToRecognise { get; set; }
}
