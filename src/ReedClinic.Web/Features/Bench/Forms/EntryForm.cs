using System.Text.Json;
using ReedClinic.Data.Engine;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Web.Features.Bench.Forms;

/// <summary>
/// One entry as it is being typed. It can be filled from a post, from a draft or from an entry that is being said better, and
/// it becomes an entry or a list of problems; what was typed stays as it is.
/// </summary>
public abstract class EntryForm
{
    /// <summary>The field that says what kind of entry a posted form is.</summary>
    public const string KindField = "Kind";

    private const string OperationField = "Operation";
    private const string SeenField = "Seen";

    private Dictionary<string, string>? opened;

    /// <summary>What kind of entry it makes.</summary>
    public abstract EntryKind Kind { get; }

    /// <summary>What was typed.</summary>
    public TypedText Typed { get; private set; } = new();

    /// <summary>Made when the form opened: sending it twice is the same as once.</summary>
    public OperationId Operation { get; private set; }

    /// <summary>The last entry of the fact that is being said better; null for something new.</summary>
    public EntryId? Seen { get; private set; }

    /// <summary>True when something was typed since it opened; always, when it came out of a draft or a post.</summary>
    public bool IsTouched => opened is null || opened.Count != Typed.Fields.Count || opened.Any(was => Typed[was.Key] != was.Value);

    /// <summary>An empty form.</summary>
    /// <param name="kind">The kind of entry.</param>
    /// <param name="operation">Made now.</param>
    public static EntryForm New(EntryKind kind, OperationId operation) => Make(kind, operation, null, new TypedText()).AsOpened();

    /// <summary>A form that says an entry better.</summary>
    /// <param name="fact">The fact, with its wording that stands.</param>
    /// <param name="operation">Made now.</param>
    public static EntryForm Correcting(BenchFact fact, OperationId operation)
    {
        var form = Make(fact.Kind, operation, fact.Tail, new TypedText());
        if (fact.Now is { } entry)
        {
            form.Fill(entry);
        }

        return form.AsOpened();
    }

    /// <summary>An entry as its form has it, field by field.</summary>
    /// <param name="entry">The entry.</param>
    public static IReadOnlyDictionary<string, string> FieldsOf(BenchEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        var form = Make(entry.Kind, default, null, new TypedText());
        form.Fill(entry);
        return form.Typed.Fields;
    }

    /// <summary>A form as it was posted.</summary>
    /// <param name="posted">The fields.</param>
    /// <param name="operation">For a post that brings none.</param>
    /// <returns>The form, or null when it doesn't say what kind of entry it is.</returns>
    public static EntryForm? Of(IFormCollection posted, OperationId operation)
    {
        var typed = TypedText.Of(posted);
        if (typed.Maybe<EntryKind>(KindField) is not { } kind)
        {
            return null;
        }

        var form = Make(
            kind,
            typed.Id(OperationField) is { } sent ? new OperationId(sent) : operation,
            typed.Id(SeenField) is { } seen ? new EntryId(seen) : null,
            typed);
        typed[KindField] = "";
        typed[OperationField] = "";
        typed[SeenField] = "";
        return form;
    }

    /// <summary>A form as a draft kept it.</summary>
    /// <param name="draft">The draft.</param>
    /// <returns>The form, or null when the draft can't be read.</returns>
    public static EntryForm? OfDraft(string? draft)
    {
        try
        {
            return string.IsNullOrEmpty(draft) || JsonSerializer.Deserialize<Kept>(draft) is not { Fields: not null } kept || !Enum.IsDefined(kept.Kind)
                ? null
                : Make(kept.Kind, new OperationId(kept.Operation), kept.Seen is { } seen ? new EntryId(seen) : null, new TypedText(kept.Fields));
        }
        catch (JsonException)
        {
            return null;
        }
    }

    /// <summary>The form as a draft keeps it.</summary>
    public string ToDraft() =>
        JsonSerializer.Serialize(new Kept(Kind, Operation.Value, Seen?.Value, Typed.Fields), StoredText.Json);

    /// <summary>The entry, or what is wrong with it; the fields of problems are this form's own.</summary>
    /// <param name="tuning">What the student tunes to.</param>
    public abstract Outcome<BenchEntry> ToDomain(Tuning tuning);

    /// <summary>The same text, to be tried once more over what stands now.</summary>
    /// <param name="tail">The last entry of the fact as it stands.</param>
    /// <param name="operation">Made now.</param>
    public EntryForm Over(EntryId tail, OperationId operation) => Make(Kind, operation, tail, Typed);

    /// <summary>Takes what stands in the fields for how the form opened.</summary>
    public EntryForm AsOpened()
    {
        opened = new(Typed.Fields);
        return this;
    }

    /// <summary>Writes an entry into the fields.</summary>
    /// <param name="entry">The entry, of this form's kind.</param>
    protected abstract void Fill(BenchEntry entry);

    /// <summary>An outcome of one kind of entry as an outcome of any.</summary>
    /// <typeparam name="T">The kind.</typeparam>
    /// <param name="made">What the factory gave.</param>
    protected static Outcome<BenchEntry> Any<T>(Outcome<T> made)
        where T : BenchEntry => made switch
        {
            Outcome<T>.Done(var entry) => new Outcome<BenchEntry>.Done(entry),
            Outcome<T>.Refused(var problems) => new Outcome<BenchEntry>.Refused(problems),
            _ => new Outcome<BenchEntry>.NotFound(),
        };

    /// <summary>The text of a field, or null when it is empty.</summary>
    /// <param name="name">The field's name.</param>
    protected string? Text(string name) => Typed[name] is { Length: > 0 } text ? text : null;

    private static EntryForm Make(EntryKind kind, OperationId operation, EntryId? seen, TypedText typed)
    {
        EntryForm form = kind switch
        {
            EntryKind.Test => new TestForm(),
            EntryKind.Finding => new FindingForm(),
            EntryKind.LookedFor => new LookedForForm(),
            EntryKind.FindingEnded => new FindingEndedForm(),
            EntryKind.LeaveAlone => new LeaveAloneForm(),
            EntryKind.Adjustment => new AdjustmentForm(),
            EntryKind.Risk => new RiskForm(),
            EntryKind.RiskClosed => new RiskClosedForm(),
            EntryKind.Note => new NoteForm(),
            EntryKind.Stopped => new StopForm(),
            EntryKind.Verdict => new VerdictForm(),
            EntryKind.AdviceSetAside => new AdviceSetAsideForm(),
            EntryKind.Parked => new ParkedForm(),
            EntryKind.CauseJudged => new CauseJudgedForm(),
            _ => new UndoForm(),
        };
        form.Operation = operation;
        form.Seen = seen;
        form.Typed = typed;
        return form;
    }

    private sealed record Kept(EntryKind Kind, Guid Operation, Guid? Seen, IReadOnlyDictionary<string, string> Fields);
}
