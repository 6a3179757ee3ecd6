using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
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
    private readonly SetAside _aside = new();
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

    /// <summary>What was taken back just now.</summary>
    public BenchEntry? TookBack { get; private set; }

    /// <summary>True when what was typed came out of a draft.</summary>
    public bool FromDraft { get; private set; }

    /// <summary>True when what is typed is too long to be kept until it is saved.</summary>
    public bool Unkept { get; private set; }

    /// <summary>What the student tunes to.</summary>
    public Tuning Tuning => View?.Batch.CrowTarget.Tuning ?? Tuning.Standard;

    private OwnKinds Own => View?.Catalogue.Own ?? OwnKinds.None;

    /// <summary>Reads the reed, and the draft that was left for it.</summary>
    /// <param name="actor">Who is at the bench.</param>
    /// <param name="reed">The reed.</param>
    /// <param name="ct">Cancels the reading.</param>
    /// <returns>False when there is no such reed for this actor.</returns>
    public async Task<bool> OpenAsync(Actor actor, ReedId reed, CancellationToken ct)
    {
        View = await bench.FindAsync(actor, reed, ct);
        if (View is not null)
        {
            var draft = EntryForm.OfDraft(await drafts.FindAsync(actor, reed, ct));
            Open(draft ?? EntryForm.New(EntryKind.Test, NewOperation()));
            FromDraft = draft is not null;
        }

        return View is not null;
    }

    /// <summary>Says what is wrong with the form as it stands, as a refused post left it.</summary>
    public void Check()
    {
        if (Form.Seen is { } seen && View?.Log.FactOf(seen) is { } fact && fact.Tail != seen)
        {
            Theirs = fact;
            return;
        }

        Problems = View is { } view && EntryPost.Read(view, Form) is Outcome<BenchEntry>.Refused(var problems) ? new ProblemList(problems) : ProblemList.None;
    }

    /// <summary>Says why nothing was done; what is typed stays.</summary>
    /// <param name="why">The reason, in words for the teacher.</param>
    public Task RefuseAsync(string why)
    {
        ForgetAnswer();
        Problems = new ProblemList([new Problem("", why)]);
        return Task.CompletedTask;
    }

    /// <summary>Opens the form of another kind: as it was left, or an empty one. What is typed in the open one is set aside.</summary>
    /// <param name="kind">The kind.</param>
    public void Choose(EntryKind kind)
    {
        if (Form.Kind != kind || Form.Seen is not null)
        {
            PutAside();
            Reopen(kind, null);
        }
    }

    /// <summary>Opens a form that corrects a fact: as it was left, or as the fact stands.</summary>
    /// <param name="fact">The fact.</param>
    public void Correct(BenchFact fact)
    {
        PutAside();
        Reopen(fact.Kind, fact);
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
        ForgetAnswer();
        switch (Form)
        {
            case TestForm when field == nameof(TestKind):
                Form.Typed[nameof(Test.Step)] = "";
                break;
            case FindingForm finding when field == nameof(Finding.FindingKind):
                finding.TakeUsual(new FindingKindId(_before), Own);
                _before = Form.Typed[field];
                break;
            case AdjustmentForm work when field == nameof(Adjustment.AdjustmentKind):
                work.TakeUsual(new AdjustmentKindId(_before), Own);
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
        var wasNew = Form.Seen is null;
        await DropAsync(actor, ct);
        if (wasNew)
        {
            Open(EntryForm.New(kind, NewOperation()));
        }
        else
        {
            Reopen(kind, null);
        }
    }

    /// <summary>Saves the form. What was typed stays in it unless it was saved.</summary>
    /// <param name="actor">Who says it.</param>
    /// <param name="ct">Cancels before it is saved.</param>
    public async Task SaveAsync(Actor actor, CancellationToken ct)
    {
        // A second press after it was saved finds the next form as it opened: there is nothing to save, and nothing wrong.
        if (View is not { } view || (Saved is not null && !Form.IsTouched))
        {
            return;
        }

        ForgetAnswer();
        var outcome = await new EntryPost(bench).SaveAsync(actor, view, Form, ct);
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

        ForgetAnswer();
        var last = view.Log.LastOf(actor.Account);
        TookBack = await bench.UndoAsync(actor, view.Reed.Id, last?.Tail, NewOperation(), ct) is Outcome<BenchFact>.Done ? last?.Now : null;
        Problems = TookBack is not null
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
                Follow(Form);
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

    /// <summary>After a test the next test; otherwise an empty form of the same kind, or the one that a correction had set aside.</summary>
    private void Follow(EntryForm saved)
    {
        if (saved.Seen is not null && _aside.Take(saved.Kind, null) is { } left)
        {
            Open(left);
            return;
        }

        var form = EntryForm.New(saved.Kind, NewOperation());
        if (saved is TestForm test)
        {
            form.Typed[nameof(TestKind)] = (saved.Seen is null ? test.Next : test.Scale.TestKind).ToString();
        }

        Open(form.AsOpened());
    }

    private void PutAside()
    {
        if (Form.IsTouched)
        {
            _aside.Put(Form);
        }
    }

    private void Reopen(EntryKind kind, BenchFact? fact)
    {
        var left = _aside.Take(kind, fact?.Tail);
        Open(left ?? (fact is null ? EntryForm.New(kind, NewOperation()) : EntryForm.Correcting(fact, NewOperation())));
    }

    private void Open(EntryForm form)
    {
        Form = form;
        _before = form.Typed[form is AdjustmentForm ? nameof(Adjustment.AdjustmentKind) : nameof(Finding.FindingKind)];
        ForgetAnswer();
        Problems = ProblemList.None;
        Theirs = null;
        FromDraft = false;
        Unkept = false;
    }

    private void ForgetAnswer()
    {
        Saved = null;
        TookBack = null;
    }

    private async Task DropAsync(Actor actor, CancellationToken ct)
    {
        if (View is { } view)
        {
            // There is one draft for each reed: what is still set aside takes the place of what is done with.
            await drafts.DropAsync(actor, view.Reed.Id, ct);
            if (_aside.Last is { } left)
            {
                await drafts.KeepAsync(actor, view.Reed.Id, left.ToDraft(), ct);
            }
        }
    }

    /// <summary>Reads the log anew; what is being typed stays.</summary>
    /// <param name="actor">Who is at the bench.</param>
    /// <param name="ct">Cancels the reading.</param>
    public async Task ReadAsync(Actor actor, CancellationToken ct)
    {
        if (View is { } view)
        {
            View = await bench.FindAsync(actor, view.Reed.Id, ct);
        }
    }

    private OperationId NewOperation() => new(Guid.CreateVersion7(time.GetUtcNow()));
}
