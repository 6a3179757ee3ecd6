using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Localization;
using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Picks;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Features.Bench;
using ReedClinic.Web.Features.Bench.Forms;
using ReedClinic.Web.Features.Bench.Line;

namespace ReedClinic.Web.Tests.Bench;

/// <summary>What stands in the log comes back into the line in words that the line hears as the same; and what is asked about it.</summary>
public sealed class SaidAgainTests
{
    private static readonly AccountId Me = new(Id(5));
    private static readonly AccountId Colleague = new(Id(4));

    private readonly List<BenchEntry> entries = [];
    private readonly IStringLocalizer<BenchText> t = new ServiceCollection().AddLogging().AddLocalization().BuildServiceProvider().GetRequiredService<IStringLocalizer<BenchText>>();

    public static TheoryData<int> Picks => [.. Enumerable.Range(0, PickList.Start.Adjustments.Count)];

    [Theory]
    [MemberData(nameof(Picks))]
    public void Work_from_the_pick_list_is_taken_up_in_words_that_are_heard_as_the_same(int index)
    {
        var pick = PickList.Start.Adjustments[index];
        HeardAsTheSame(Value(Adjustment.Of(pick.Kind, pick.Place, pick.Amount)));

        // On one blade or side alone some have no words of ours: then their fields open.
        foreach (var place in new[] { pick.Place with { Blades = Blades.Upper }, pick.Place with { Sides = Sides.Left } })
        {
            if (Again(Value(Adjustment.Of(pick.Kind, place, pick.Amount))) is not null)
            {
                HeardAsTheSame(Value(Adjustment.Of(pick.Kind, place, pick.Amount)));
            }
        }
    }

    [Fact]
    public void Every_step_of_every_test_and_the_usual_pitches_are_taken_up_in_words_that_are_heard_as_the_same()
    {
        Assert.All(TestScale.All.SelectMany(scale => scale.Steps.Select((_, step) => (scale.TestKind, step))), said => HeardAsTheSame(Value(Domain.Bench.Test.Of(said.TestKind, said.step))));
        Assert.All(["C -15", "B +20", "B♭", "C5 +3", "between B and C"], pitch => HeardAsTheSame(Value(Domain.Bench.Test.Of(TestKind.Crow, pitch: Value(SaidPitch.Read(pitch, Tuning.Standard))))));
    }

    [Theory]
    [InlineData(Zone.TipCorners, "thinned at the corners of the tip, upper blade, left")]
    [InlineData(Zone.TipSides, "thinned at the corners of the tip, tip sides, upper blade, left")]
    public void Work_in_its_usual_place_says_the_place_once(Zone zone, string said) => Assert.Equal(said, new EntryWords(t, BenchLog.Empty, Tuning.Standard)
        .InShort(Value(Adjustment.Of(new("thin-corners"), new Place(zone, Blades.Upper, Sides.Left)))));

    [Fact]
    public void The_shape_of_a_finding_is_told_only_where_its_kind_does_not_say_it()
    {
        string[] Details(FindingShape shape) =>
            [.. new EntryWords(t, BenchLog.Empty, Tuning.Standard).Say(Value(Finding.Of(new("tip-long"), FindingCharacter.Fault, new Place(Zone.Rooftop), shape))).Details];

        Assert.DoesNotContain(FindingShape.SeparationAlong.Name(), Details(FindingShape.SeparationAlong));
        Assert.Contains(FindingShape.ShapeAcross.Name(), Details(FindingShape.ShapeAcross));
    }

    [Fact]
    public void What_makes_a_reed_ready_to_be_played_is_not_called_an_adjustment_and_has_no_mark()
    {
        var line = new EntryWords(t, BenchLog.Empty, Tuning.Standard).Say(Value(Adjustment.Of(new("soak"), new Place(Zone.WholeReed), new Amount(Words: "three minutes"))));

        Assert.Equal(("made ready", "soaked and settled", null), (line.Label, line.Title, line.Mark));
        Assert.Equal(["three minutes"], line.Details);
    }

    [Fact]
    public void What_was_typed_comes_back_into_the_line_where_it_is_heard_as_the_same_and_else_in_words_of_ours()
    {
        var typed = Assert.Single(HeardLine.Of("clip half a hair", BenchLog.Empty, Tuning.Standard).Entries).Entry;
        Assert.Equal("clip half a hair", Again(typed));

        Assert.Equal(Again(typed.AsSaid(null)), Again(typed.AsSaid("the same on the other one")));
    }

    [Theory]
    [InlineData("clip a hair", null)]
    [InlineData("I clipped a hair, with the new knife", "I clipped a hair, with the new knife")]
    public void What_was_typed_stands_beside_an_entry_only_where_it_says_more(string typed, string? beside)
    {
        var entry = Value(Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge))).AsSaid(typed);

        Assert.Equal(beside, TypedWords.BesideTold(entry, new EntryLine("clip", "clipped a hair", [], null)));
    }

    [Fact]
    public void What_is_put_right_keeps_the_words_that_put_it_right()
    {
        Say(Assert.Single(HeardLine.Of("thinned the left corner of the lower blade", BenchLog.Empty, Tuning.Standard).Entries).Entry, Me);

        var right = PutRight.Hear(View(), Me, "sorry, meant upper");

        Assert.Equal("sorry, meant upper", Assert.Single(right!.Entries).Entry.Said);
    }

    [Fact]
    public void The_card_names_all_that_is_taken_back_the_newest_first()
    {
        Say(Assert.Single(HeardLine.Of("crow C", BenchLog.Empty, Tuning.Standard).Entries).Entry, Me);
        var newest = Say(Assert.Single(HeardLine.Of("low D late", BenchLog.Empty, Tuning.Standard).Entries).Entry, Me);

        var right = PutRight.Hear(View(), Me, "scratch the last two")!;

        Assert.Equal((newest, 1), (right.TakesBack!.Root, right.TakesBackToo.Count));
    }

    [Fact]
    public void Words_that_were_kept_come_back_as_they_were_said_and_a_measured_test_has_none()
    {
        Assert.Equal("scraped the back", Again(Value(Adjustment.Of(new("open-windows"), new Place(Zone.Windows), words: "scraped the back"))));
        Assert.Equal("umbrella", Again(Value(Note.Of("umbrella"))));
        Assert.Equal("", Again(Value(Stopped.Of())));
        Assert.Null(Again(Value(Domain.Bench.Test.Of(TestKind.Crow, 0, measuredFrom: new(Id(77))))));
        Assert.Null(Again(Value(Verdict.Of(VerdictKind.Improved))));
    }

    [Fact]
    public void Whoever_stops_is_asked_why_with_answers_that_say_the_stop_better_and_only_while_it_is_what_was_said_last()
    {
        Say(Value(Note.Of("before")), Me);
        var stop = Say(Value(Stopped.Of()), Me);

        var asked = AskedNext.Of(View(), Me, 1, t)!;

        Assert.Equal((stop, "Why stop now?", 8), (asked.About.Root, asked.Question, asked.Answers.Count));
        Assert.Contains("The tip is as thin as it may be.", asked.Answers[1].Say, StringComparison.Ordinal);
        Assert.Contains($"\"Seen\":\"{stop.Value}\"", asked.Answers[1].Say, StringComparison.Ordinal);
        Assert.Null(AskedNext.Of(View(), Me, 2, t));
        Assert.Null(AskedNext.Of(View(), Colleague, 1, t));
        Say(Value(Note.Of("and on")), Colleague);
        Assert.Null(AskedNext.Of(View(), Me, 1, t));
    }

    [Fact]
    public void A_verdict_is_asked_about_where_the_stop_gave_no_reason()
    {
        Say(Value(Stopped.Of("It speaks.")), Me);
        var verdict = Value(Verdict.Of(VerdictKind.Improved));
        Say(verdict, Me);
        Assert.Null(AskedNext.Of(View(), Me, 0, t));

        entries.Clear();
        Say(verdict, Me);
        Assert.Contains("\"VerdictKind\":\"Improved\"", AskedNext.Of(View(), Me, 0, t)!.Answers[0].Say, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("scraped the back", true)]
    [InlineData("took three off the back", true)]
    [InlineData("opened the windows", false)]
    public void All_of_the_back_is_asked_about_and_its_windows_are_not(string phrase, bool isAsked)
    {
        Say(Assert.Single(HeardLine.Of(phrase, BenchLog.Empty, Tuning.Standard).All), Me);

        var asked = AskedNext.Of(View(), Me, 0, t);

        Assert.Equal(isAsked, asked is not null);
        Assert.Equal(isAsked ? ["opened in the windows", "scraped at the base of the lay", "thinned at the spine", "thinned at the rails"] : [], asked?.Answers.Select(answer => answer.Words) ?? []);
    }

    [Fact]
    public void The_answer_which_part_of_the_back_keeps_the_words_and_is_not_asked_for_again()
    {
        Say(Assert.Single(HeardLine.Of("scraped the back", BenchLog.Empty, Tuning.Standard).All), Me);
        var asked = AskedNext.Of(View(), Me, 0, t)!;

        Assert.All(asked.Answers, answer => Assert.Contains("\"Words\":\"scraped the back\"", answer.Say, StringComparison.Ordinal));

        // The first answer is what was understood: said so, it stands.
        var work = Assert.IsType<Adjustment>(asked.About.Now);
        Correct(asked.About.Tail, Value(Adjustment.Of(work.AdjustmentKind, work.Place, work.Amount, words: work.Words)), Me);
        Assert.Equal("scraped the back", Assert.Single(View().Log.Live<Adjustment>()).Now.Words);
        Assert.Null(AskedNext.Of(View(), Me, 0, t));
    }

    private static T Value<T>(Outcome<T> outcome) => Assert.IsType<Outcome<T>.Done>(outcome).Value;

    private static Guid Id(int n) => new(n, 0, 0, new byte[8]);

    private void HeardAsTheSame(BenchEntry entry)
    {
        var words = Again(entry);
        Assert.NotNull(words);
        var heard = Assert.Single(HeardLine.Of(words, BenchLog.Empty, Tuning.Standard).All);
        Assert.Equal(Fields(entry), Fields(heard));
    }

    // A pitch may be written in more ways than one, and “a hair” is in the name of what was done.
    private static List<string> Fields(BenchEntry entry) =>
        [.. EntryForm.FieldsOf(entry).Where(field => field is not { Key: nameof(Domain.Bench.Test.Pitch) } and not { Key: nameof(Amount), Value: "a hair" or "hair" }).Select(field => $"{field.Key}={field.Value}").Order(StringComparer.Ordinal),
            $"{(entry as Domain.Bench.Test)?.Pitch?.PitchClass} {(entry as Domain.Bench.Test)?.Pitch?.Cents}"];

    private string? Again(BenchEntry entry) => SaidAgain.Of(entry, View());

    private EntryId Say(BenchEntry entry, AccountId by)
    {
        var id = new EntryId(Id(1000 + entries.Count));
        entries.Add(entry.StampedWith(new EntryStamp(id, new ReedId(Id(900)), entries.Count + 1, new OperationId(Id(2000 + entries.Count)), DateTimeOffset.UnixEpoch, by)));
        return id;
    }

    private void Correct(EntryId seen, BenchEntry entry, AccountId by) => entries.Add(entry.StampedWith(new EntryStamp(
        new EntryId(Id(1000 + entries.Count)), new ReedId(Id(900)), entries.Count + 1, new OperationId(Id(2000 + entries.Count)), DateTimeOffset.UnixEpoch, by, seen)));

    private BenchView View()
    {
        var n = 100;
        var student = new Student(new StudentId(Id(6)), "Mira");
        var batch = Batch.Announce(
            new BatchId(Id(7)), BatchCode.FromNumber(77), student.Id, new OperationId(Id(8)),
            new AnnouncedBatch(null, Tuning.Standard, null, [new AnnouncedReed("green thread", "it bites", Permission.TakeRisks)], []), () => Id(n++), DateTimeOffset.UnixEpoch);
        return new BenchView(student, batch, batch.Reeds[0], BenchLog.Fold(entries), new Dictionary<AccountId, string>(), null);
    }
}
