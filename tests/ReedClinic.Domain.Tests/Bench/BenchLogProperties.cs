using CsCheck;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.People;

namespace ReedClinic.Domain.Tests.Bench;

/// <summary>
/// A random session of two teachers is played twice: into a log, and into a model so plain that it can be read at a glance
/// (a stack of wordings for each fact). However the log is shuffled and repeated, it has to fold to what the model says.
/// </summary>
public sealed class BenchLogProperties
{
    private static readonly Gen<Step> Steps = Gen.Frequency(
        (6, Gen.Select(Gen.Int[0, 10], Gen.Bool, (kind, ada) => new Step(Deed.Say, kind, ada))),
        (3, Gen.Select(Gen.Int[0, 30], Gen.Bool, (pick, ada) => new Step(Deed.Correct, pick, ada))),
        (3, Gen.Bool.Select(ada => new Step(Deed.Undo, 0, ada))),
        (1, Gen.Int[0, 30].Select(pick => new Step(Deed.Repeat, pick, true))));

    private static readonly Gen<Session> Sessions = Steps.List[0, 40].Select(Play);

    private enum Deed
    {
        Say,
        Correct,
        Undo,
        Repeat,
    }

    [Fact]
    public void Any_order_and_any_repetition_of_the_entries_folds_to_one_state() =>
        Gen.Select(Sessions, Gen.Int).Sample(
            (session, seed) =>
            {
                var entries = session.Writer.Entries;
                var jumbled = entries.Concat(entries.Where((_, index) => index % 3 == 0)).ToArray();
                new Random(seed).Shuffle(jumbled);

                Assert.Equal(Picture(BenchLog.Fold(entries)), Picture(BenchLog.Fold(jumbled)));
            },
            iter: 2000);

    [Fact]
    public void The_fold_says_what_stands_exactly_as_a_stack_of_wordings_for_each_fact_does() =>
        Sessions.Sample(
            session => Assert.Equal(
                session.Facts.Select(fact => fact.TryPeek(out var now) ? now : (EntryId?)null),
                BenchLog.Fold(session.Writer.Entries.Reverse()).Facts.Select(fact => fact.Now?.Id)),
            iter: 2000);

    [Fact]
    public void Nothing_is_ever_lost_every_entry_is_in_the_history_once_with_a_standing() =>
        Gen.Select(Sessions, Gen.Int[0, 1000]).Sample(
            (session, seed) =>
            {
                // Some entries are torn out of the log, so that others dangle.
                var random = new Random(seed);
                var left = session.Writer.Entries.Where(_ => random.Next(5) > 0).ToList();

                var log = BenchLog.Fold(left);

                Assert.Equal(left.Select(entry => entry.Id), log.History.Select(line => line.Entry.Id));
                Assert.All(log.History, line => Assert.Equal(line.Fact is null, log.FactOf(line.Entry.Id) is null));
                Assert.Equal(
                    log.Facts.Where(fact => fact.Now is not null).Select(fact => fact.Now!.Id).Order(ById),
                    log.History
                        .Where(line => line.Standing is EntryStanding.Stands or EntryStanding.StandsButNamesNothing)
                        .Select(line => line.Entry.Id).Order(ById));
            },
            iter: 2000);

    [Fact]
    public void Every_fact_that_stands_is_in_exactly_one_pass_and_passes_never_run_backwards() =>
        Sessions.Sample(
            session =>
            {
                var log = BenchLog.Fold(session.Writer.Entries);
                var standing = log.Facts.Where(fact => fact.Now is not null).ToList();

                Assert.Equal(standing, log.Passes.SelectMany(pass => pass.Facts));
                Assert.All(log.Passes.Skip(1), pass => Assert.Equal(EntryKind.Adjustment, pass.Facts[0].Kind));
                Assert.Empty(log.Passes[0].Adjustments);
            },
            iter: 2000);

    [Fact]
    public void Clashing_entries_fold_the_same_in_any_order() =>
        Gen.Select(
            Gen.Select(Gen.Int[1, 6], Gen.Int[0, 12], Gen.Int[0, 7], Gen.Bool).List[1, 12],
            Gen.Int).Sample(
            (wild, seed) =>
            {
                // Nothing here is as a stored log would have it: sequences clash, targets are missing, later or foreign.
                var writer = new Writer();
                foreach (var (sequence, target, kind, undo) in wild)
                {
                    writer.Add(
                        undo && target > 6 ? Undo.Entry() : Content(kind, null),
                        sequence,
                        target == 0 ? null : new EntryId(Writer.Number(10, target)),
                        operation: kind == 7 ? new OperationId(Writer.Number(20, 1)) : null);
                }

                var jumbled = writer.Entries.ToArray();
                new Random(seed).Shuffle(jumbled);

                Assert.Equal(Picture(writer.Log), Picture(BenchLog.Fold(jumbled)));
                Assert.Equal(wild.Count, writer.Log.History.Count);
            },
            iter: 2000);

    private static readonly Comparer<EntryId> ById = Comparer<EntryId>.Create((a, b) => a.Value.CompareTo(b.Value));

    private static Session Play(List<Step> steps)
    {
        var session = new Session(new Writer(), []);
        foreach (var step in steps)
        {
            session.Take(step);
        }

        return session;
    }

    private static BenchEntry Content(int kind, EntryId? target) => kind switch
    {
        0 or 1 => Writer.Test(TestKind.Crow, 0),
        2 or 3 => Writer.Work(target),
        4 => Writer.Found(),
        5 => Writer.Value(FindingEnded.Of(target ?? default, FindingEnding.Better)),
        6 => Writer.Value(Verdict.Of(VerdictKind.Improved)),
        8 => Writer.Value(Parked.Of()),
        10 => Writer.Value(CauseJudged.Of(new CauseId("tip-thick"), CauseAnswer.Confirmed)),
        9 => Writer.Value(AdviceSetAside.Of(new AdviceId("untested/0"))),
        _ => Writer.Note("A remark."),
    };

    private static string Picture(BenchLog log) => string.Join(
        '\n',
        log.Facts.Select(fact => $"{fact.Root} {fact.Now?.Id} {fact.State} {fact.Pass} {string.Join(',', fact.Chain.Select(e => e.Id))}")
            .Concat(log.History.Select(line => $"{line.Entry.Id} {line.Standing} {line.Fact}"))
            .Concat(log.Moves.Select(move => $"{move.TestKind} {move.Arrival?.Root} {move.Now?.Root}"))
            .Concat(log.Findings.Select(f => $"{f.Fact.Root} {f.Ended?.Root} {string.Join(',', f.DoneForIt.Select(d => d.Root))}"))
            .Append($"{log.Verdict?.Root} {log.IsStopped} {log.IsParked} {log.LastSequence} {log.Passes.Count}"));

    private sealed record Step(Deed Deed, int Pick, bool Ada);

    /// <summary>The model: for each fact, in the order in which it was first said, the wordings not taken back.</summary>
    private sealed record Session(Writer Writer, List<Stack<EntryId>> Facts)
    {
        private readonly List<(EntryId Tail, EntryKind Kind)> tails = [];
        private readonly List<EntryId> roots = [];

        public void Take(Step step)
        {
            var by = step.Ada ? Writer.Ada : Writer.Ben;
            switch (step.Deed)
            {
                case Deed.Say:
                    Say(step.Pick, by);
                    break;
                case Deed.Correct when Facts.Count > 0:
                    Correct(step.Pick % Facts.Count, by);
                    break;
                case Deed.Undo:
                    Undo(by);
                    break;
                case Deed.Repeat when Writer.Entries.Count > 0:
                    var again = Writer.Entries[step.Pick % Writer.Entries.Count];
                    Writer.Add(again, Writer.Entries.Count + 1, again.Supersedes, operation: again.OperationId);
                    break;
            }
        }

        private void Say(int kind, AccountId by)
        {
            var entry = Content(kind, Facts.Count > 0 ? Root(kind % Facts.Count) : null);
            var id = Writer.Say(entry, by: by);
            Facts.Add(new Stack<EntryId>([id]));
            tails.Add((id, entry.Kind));
            roots.Add(id);
        }

        private void Correct(int index, AccountId by)
        {
            var (tail, kind) = tails[index];
            var wording = Enumerable.Range(0, 11).Select(i => Content(i, Root(index))).First(entry => entry.Kind == kind);
            var id = Writer.Say(wording, supersedes: tail, by: by);
            Facts[index].Push(id);
            tails[index] = (id, kind);
        }

        private void Undo(AccountId by)
        {
            // As a teacher does: the last of one's own wordings that stand.
            var mine = Enumerable.Range(0, Facts.Count)
                .Where(i => Facts[i].TryPeek(out var now) && Entry(now).RecordedBy == by)
                .OrderBy(i => Entry(Facts[i].Peek()).Sequence)
                .ToList();
            if (mine.Count > 0)
            {
                var index = mine[^1];
                tails[index] = (Writer.Undo(tails[index].Tail, by), tails[index].Kind);
                Facts[index].Pop();
            }
        }

        private EntryId Root(int index) => roots[index];

        private BenchEntry Entry(EntryId id) => Writer.Entries.First(entry => entry.Id == id);
    }
}
