using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Web.Features.Bench.Forms;

/// <summary>A place that is not to be touched, as it is typed.</summary>
public sealed class LeaveAloneForm : EntryForm
{
    /// <inheritdoc />
    public override EntryKind Kind => EntryKind.LeaveAlone;

    /// <inheritdoc />
    public override Outcome<BenchEntry> ToDomain(Tuning tuning) => Any(LeaveAlone.Of(Typed.PlaceAt(), Text(nameof(LeaveAlone.Words))));

    /// <inheritdoc />
    protected override void Fill(BenchEntry entry)
    {
        var left = (LeaveAlone)entry;
        Typed.Put(left.Place);
        Typed[nameof(LeaveAlone.Words)] = left.Words;
    }
}

/// <summary>A risk named before acting, as it is typed.</summary>
public sealed class RiskForm : EntryForm
{
    /// <inheritdoc />
    public override EntryKind Kind => EntryKind.Risk;

    /// <inheritdoc />
    public override Outcome<BenchEntry> ToDomain(Tuning tuning) => Any(Risk.Of(Text(nameof(Risk.Words)), Typed.Maybe<Zone>(nameof(Zone))));

    /// <inheritdoc />
    protected override void Fill(BenchEntry entry)
    {
        var risk = (Risk)entry;
        Typed[nameof(Risk.Words)] = risk.Words;
        Typed[nameof(Zone)] = risk.Zone?.ToString() ?? "";
    }
}

/// <summary>A remark, as it is typed.</summary>
public sealed class NoteForm : EntryForm
{
    /// <inheritdoc />
    public override EntryKind Kind => EntryKind.Note;

    /// <inheritdoc />
    public override Outcome<BenchEntry> ToDomain(Tuning tuning) => Any(Note.Of(Text(nameof(Note.Words))));

    /// <inheritdoc />
    protected override void Fill(BenchEntry entry) => Typed[nameof(Note.Words)] = ((Note)entry).Words;
}

/// <summary>The decision to stop, as it is typed.</summary>
public sealed class StopForm : EntryForm
{
    /// <inheritdoc />
    public override EntryKind Kind => EntryKind.Stopped;

    /// <inheritdoc />
    public override Outcome<BenchEntry> ToDomain(Tuning tuning) => Any(Stopped.Of(Text(nameof(Stopped.Words))));

    /// <inheritdoc />
    protected override void Fill(BenchEntry entry) => Typed[nameof(Stopped.Words)] = ((Stopped)entry).Words ?? "";
}

/// <summary>How the reed leaves the bench, as it is typed.</summary>
public sealed class VerdictForm : EntryForm
{
    /// <inheritdoc />
    public override EntryKind Kind => EntryKind.Verdict;

    /// <inheritdoc />
    public override Outcome<BenchEntry> ToDomain(Tuning tuning) =>
        Any(Verdict.Of(Typed.Choice<VerdictKind>(nameof(Verdict.VerdictKind)), Text(nameof(Verdict.Words))));

    /// <inheritdoc />
    protected override void Fill(BenchEntry entry)
    {
        var verdict = (Verdict)entry;
        Typed[nameof(Verdict.VerdictKind)] = verdict.VerdictKind.ToString();
        Typed[nameof(Verdict.Words)] = verdict.Words ?? "";
    }
}

/// <summary>The reed is put aside for now, as it is typed.</summary>
public sealed class ParkedForm : EntryForm
{
    /// <inheritdoc />
    public override EntryKind Kind => EntryKind.Parked;

    /// <inheritdoc />
    public override Outcome<BenchEntry> ToDomain(Tuning tuning) => Any(Parked.Of(Text(nameof(Parked.Words))));

    /// <inheritdoc />
    protected override void Fill(BenchEntry entry) => Typed[nameof(Parked.Words)] = ((Parked)entry).Words ?? "";
}

/// <summary>A piece of advice that is set aside; only its reason is typed.</summary>
public sealed class AdviceSetAsideForm : EntryForm
{
    /// <inheritdoc />
    public override EntryKind Kind => EntryKind.AdviceSetAside;

    /// <inheritdoc />
    public override Outcome<BenchEntry> ToDomain(Tuning tuning) =>
        Any(AdviceSetAside.Of(new AdviceId(Typed[nameof(AdviceSetAside.AdviceId)]), Text(nameof(AdviceSetAside.Words))));

    /// <inheritdoc />
    protected override void Fill(BenchEntry entry)
    {
        var aside = (AdviceSetAside)entry;
        Typed[nameof(AdviceSetAside.AdviceId)] = aside.AdviceId.Value;
        Typed[nameof(AdviceSetAside.Words)] = aside.Words ?? "";
    }
}

/// <summary>A word on a likely cause; which one is chosen where it is shown.</summary>
public sealed class CauseJudgedForm : EntryForm
{
    /// <inheritdoc />
    public override EntryKind Kind => EntryKind.CauseJudged;

    /// <inheritdoc />
    public override Outcome<BenchEntry> ToDomain(Tuning tuning) =>
        Any(CauseJudged.Of(new CauseId(Typed[nameof(CauseJudged.Cause)]), Typed.Choice<CauseAnswer>(nameof(CauseJudged.Answer))));

    /// <inheritdoc />
    protected override void Fill(BenchEntry entry)
    {
        var word = (CauseJudged)entry;
        Typed[nameof(CauseJudged.Cause)] = word.Cause.Value;
        Typed[nameof(CauseJudged.Answer)] = word.Answer.ToString();
    }
}

/// <summary>Takes the last entry back: nothing is typed in it.</summary>
public sealed class UndoForm : EntryForm
{
    /// <summary>The field that says that it is one entry that is meant, wherever it stands, and not the last one.</summary>
    public const string OneField = "One";

    /// <summary>True when it takes back the entry that it names, wherever that stands.</summary>
    public bool IsOfOne => Typed[OneField] == "true";

    /// <inheritdoc />
    public override EntryKind Kind => EntryKind.Undo;

    /// <inheritdoc />
    public override Outcome<BenchEntry> ToDomain(Tuning tuning) => new Outcome<BenchEntry>.Done(Undo.Entry());

    /// <inheritdoc />
    protected override void Fill(BenchEntry entry)
    {
        // There is nothing to fill in.
    }
}
