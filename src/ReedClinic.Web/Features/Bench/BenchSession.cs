using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Features.Bench.Forms;
using ReedClinic.Web.Shared.Forms;

namespace ReedClinic.Web.Features.Bench;

/// <summary>One teacher at one reed: the form that is open, what was wrong with it, and how it is saved. It knows no screen.</summary>
public sealed class BenchSession(BenchBook bench, BenchDraftBook drafts, TimeProvider time)
{
    private string _before = "";

    /// <summary>The reed, its batch and its log.</summary>
    public BenchView? View { get; private set; }

    /// <summary>The form that is open.</summary>
    public EntryForm Form { get; private set; } = EntryForm.New(EntryKind.Test, default);

    /// <summary>What was wrong with it.</summary>
    public ProblemList Problems { get; private set; } = ProblemList.None;

    /// <summary>The fact as somebody else has said it meanwhile, when that kept this form from being saved.</summary>
    public BenchFact? Theirs { get; private set; }

    /// <summary>The fact that was saved last.</summary>
    public BenchFact? Saved { get; private set; }

    /// <summary>True when what was typed came out of a draft.</summary>
    public bool FromDraft { get; private set; }

    /// <summary>True when what is typed is too long to be kept until it is saved.</summary>
    public bool Unkept { get; private set; }

    /// <summary>What the student tunes to.</summary>
    public Tuning Tuning => View?.Batch.CrowTarget.Tuning ?? Tuning.Standard;

    /// <summary>Reads the reed, and the draft that was left for it.</summary>
    /// <param name="actor">Who is at the bench.</param>
    /// <param name="reed">The reed.</param>
    /// <param name="ct">Cancels the reading.</param>
    /// <returns>False when there is no such reed for this actor.</returns>
    public async Task<bool> OpenAsync(Actor actor, ReedId reed, CancellationToken ct)
    {
        View = await bench.FindAsync(actor, reed, ct);
        if (View is null)
        {
            return false;
        }

        var draft = EntryForm.OfDraft(await drafts.FindAsync(actor, reed, ct));
        FromDraft = draft is not null;
        Form = draft ?? EntryForm.New(EntryKind.Test, NewOperation());
        return true;
    }

    /// <summary>Says what is wrong with the form as it stands, as a refused post left it.</summary>
    public void Check()
    {
        if (Form.Seen is { } seen && View?.Log.FactOf(seen) is { } fact && fact.Tail != seen)
        {
            Theirs = fact;
            return;
        }

        Problems = Form.ToDomain(Tuning) switch
        {
            Outcome<BenchEntry>.Refused(var problems) => new ProblemList(problems),
            Outcome<BenchEntry>.Done(var entry) when View is { } view && Agreement.Wanted(view.Reed, entry) is { } wanted => new ProblemList([wanted]),
            _ => ProblemList.None,
        };
    }

    /// <summary>Opens an empty form of another kind.</summary>
    /// <param name="kind">The kind.</param>
    public void Choose(EntryKind kind)
    {
        Open(EntryForm.New(kind, NewOperation()));
        Saved = null;
    }

    /// <summary>Opens a form that says a fact better.</summary>
    /// <param name="fact">The fact.</param>
    public void Correct(BenchFact fact)
    {
        Open(EntryForm.Correcting(fact, NewOperation()));
        Saved = null;
    }

    /// <summary>Puts a place into the form; a form that has none becomes a finding.</summary>
    /// <param name="pointed">The piece of the reed that was pointed at.</param>
    public void Point(Place pointed)
    {
        if (Form.Kind is not (EntryKind.Finding or EntryKind.Adjustment or EntryKind.LeaveAlone or EntryKind.Risk))
        {
            Choose(EntryKind.Finding);
        }

        Form.Typed.Put(Form.Typed.MaybePlace().And(pointed));
    }

    /// <summary>Follows up a change: another test has other words, another kind has its usual place.</summary>
    /// <param name="field">The field that was changed.</param>
    public void Settle(string field)
    {
        switch (Form)
        {
            case TestForm when field == nameof(TestKind):
                Form.Typed[nameof(Test.Step)] = "";
                break;
            case FindingForm finding when field == nameof(Finding.FindingKind):
                finding.TakeUsual(new FindingKindId(_before));
                _before = Form.Typed[field];
                break;
            case AdjustmentForm work when field == nameof(Adjustment.AdjustmentKind):
                work.TakeUsual(new AdjustmentKindId(_before));
                _before = Form.Typed[field];
                break;
        }
    }

    /// <summary>Keeps what is typed as a draft.</summary>
    /// <param name="actor">Who types.</param>
    /// <param name="ct">Cancels before it is saved.</param>
    public async Task KeepAsync(Actor actor, CancellationToken ct)
    {
        if (View is { } view)
        {
            Unkept = !await drafts.KeepAsync(actor, view.Reed.Id, Form.ToDraft(), ct);
        }
    }

    /// <summary>Gives up what was typed.</summary>
    /// <param name="actor">Who typed it.</param>
    /// <param name="ct">Cancels before it is gone.</param>
    public async Task GiveUpAsync(Actor actor, CancellationToken ct)
    {
        var kind = Form.Kind;
        await DropAsync(actor, ct);
        Choose(kind);
    }

    /// <summary>Saves the form. What was typed stays in it unless it was saved.</summary>
    /// <param name="actor">Who says it.</param>
    /// <param name="ct">Cancels before it is saved.</param>
    public async Task SaveAsync(Actor actor, CancellationToken ct)
    {
        if (View is not { } view)
        {
            return;
        }

        var outcome = await new EntryPost(bench).SaveAsync(actor, view.Reed, Form, Tuning, ct);
        await TakeAsync(actor, outcome, ct);
    }

    /// <summary>Saves this wording over what somebody else has said meanwhile.</summary>
    /// <param name="actor">Who says it.</param>
    /// <param name="ct">Cancels before it is saved.</param>
    public Task SaveOverAsync(Actor actor, CancellationToken ct)
    {
        if (Theirs is { } theirs)
        {
            Open(Form.Over(theirs.Tail, NewOperation()));
        }

        return SaveAsync(actor, ct);
    }

    /// <summary>Takes back this teacher's last entry; what is being typed stays.</summary>
    /// <param name="actor">Who takes it back.</param>
    /// <param name="ct">Cancels before it is saved.</param>
    public async Task UndoAsync(Actor actor, CancellationToken ct)
    {
        if (View is not { } view)
        {
            return;
        }

        var outcome = await bench.UndoAsync(actor, view.Reed.Id, view.Log.LastOf(actor.Account)?.Tail, NewOperation(), ct);
        Problems = outcome is Outcome<BenchFact>.Done
            ? ProblemList.None
            : new ProblemList([new Problem("", "Nothing was taken back: since this page was opened, your last entry has become another one. It is shown now.")]);
        await ReadAsync(actor, ct);
    }

    private async Task TakeAsync(Actor actor, Outcome<BenchFact> outcome, CancellationToken ct)
    {
        switch (outcome)
        {
            case Outcome<BenchFact>.Done(var fact):
                await DropAsync(actor, ct);
                await ReadAsync(actor, ct);
                Open(Following(Form));
                Saved = fact;
                break;
            case Outcome<BenchFact>.Conflict(var theirs):
                await ReadAsync(actor, ct);
                Theirs = theirs;
                break;
            case Outcome<BenchFact>.Refused(var problems):
                Problems = new ProblemList(problems);
                break;
            default:
                await ReadAsync(actor, ct);
                break;
        }
    }

    /// <summary>After a test the next test; otherwise an empty form of the same kind.</summary>
    private EntryForm Following(EntryForm saved)
    {
        var form = EntryForm.New(saved.Kind, NewOperation());
        if (saved is TestForm test)
        {
            form.Typed[nameof(TestKind)] = (saved.Seen is null ? test.Next : test.Scale.TestKind).ToString();
        }

        return form;
    }

    private void Open(EntryForm form)
    {
        Form = form;
        _before = form.Typed[form is AdjustmentForm ? nameof(Adjustment.AdjustmentKind) : nameof(Finding.FindingKind)];
        Problems = ProblemList.None;
        Theirs = null;
        FromDraft = false;
        Unkept = false;
    }

    private async Task DropAsync(Actor actor, CancellationToken ct)
    {
        if (View is { } view)
        {
            await drafts.DropAsync(actor, view.Reed.Id, ct);
        }
    }

    private async Task ReadAsync(Actor actor, CancellationToken ct)
    {
        if (View is { } view)
        {
            View = await bench.FindAsync(actor, view.Reed.Id, ct);
        }
    }

    private OperationId NewOperation() => new(Guid.CreateVersion7(time.GetUtcNow()));
}
