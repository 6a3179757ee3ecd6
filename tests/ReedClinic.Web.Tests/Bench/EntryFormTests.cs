using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Primitives;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Features.Bench.Forms;

namespace ReedClinic.Web.Tests.Bench;

public sealed class EntryFormTests
{
    private static readonly Tuning At442 = new(new Hertz(442));
    private static readonly OperationId Operation = new(Id(1));
    private static readonly EntryId Root = new(Id(2));

    public static TheoryData<string> Kinds =>
        [.. Enum.GetValues<EntryKind>().Where(kind => kind != EntryKind.Undo).Select(kind => kind.ToString())];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void An_entry_written_into_a_form_comes_out_as_it_was(string kind)
    {
        var entry = Sample(Enum.Parse<EntryKind>(kind));

        var again = Made(EntryForm.Correcting(Fact(entry), Operation).ToDomain(At442));

        Assert.Equal(Told(entry), Told(again));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_draft_gives_the_same_form_back(string kind)
    {
        var form = EntryForm.Correcting(Fact(Sample(Enum.Parse<EntryKind>(kind))), Operation);

        var back = EntryForm.OfDraft(form.ToDraft())!;

        Assert.Equal((form.Kind, form.Operation, form.Seen), (back.Kind, back.Operation, back.Seen));
        Assert.Equal(form.Typed.Fields, back.Typed.Fields);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("no json")]
    [InlineData("{}")]
    [InlineData("""{"Kind":99,"Operation":"00000000-0000-0000-0000-000000000001","Fields":{}}""")]
    public void A_draft_that_cannot_be_read_is_no_form(string? draft) => Assert.Null(EntryForm.OfDraft(draft));

    [Theory]
    [MemberData(nameof(Kinds))]
    public void An_empty_form_says_what_is_missing_and_never_throws(string kind)
    {
        var form = EntryForm.New(Enum.Parse<EntryKind>(kind), Operation);

        var outcome = form.ToDomain(At442);

        if (form.Kind is not (EntryKind.Stopped or EntryKind.Parked))
        {
            Assert.NotEmpty(Assert.IsType<Outcome<BenchEntry>.Refused>(outcome).Problems);
        }
    }

    [Theory]
    [InlineData("70.5")]
    [InlineData(" 70,5 ")]
    public void A_length_is_typed_as_a_number_and_the_word_of_another_test_does_not_follow_it(string typed)
    {
        var made = Made(Post(EntryKind.Test, ("TestKind", "Length"), ("Step", "1"), ("Millimetres", typed)).ToDomain(At442));

        Assert.Equal((70.5m, null), (((Domain.Bench.Test)made).Millimetres, ((Domain.Bench.Test)made).Step));
        Assert.Equal(Told(made), Told(Made(EntryForm.Correcting(Fact(made), Operation).ToDomain(At442))));
    }

    [Theory]
    [InlineData("long")]
    [InlineData("70.55")]
    [InlineData("")]
    public void A_length_that_is_no_number_of_tenths_is_told_beside_its_field(string typed)
    {
        var form = Post(EntryKind.Test, ("TestKind", "Length"), ("Millimetres", typed));

        Assert.Equal("Millimetres", Assert.Single(Assert.IsType<Outcome<BenchEntry>.Refused>(form.ToDomain(At442)).Problems).Field);
    }

    [Theory]
    [InlineData("H minus a bit")]
    [InlineData("C +400")]
    public void A_pitch_that_cannot_be_read_stays_as_it_was_typed_and_examples_are_given(string typed)
    {
        var form = Post(EntryKind.Test, ("TestKind", "Crow"), ("Step", "0"), ("Pitch", typed));

        var problem = Assert.Single(Assert.IsType<Outcome<BenchEntry>.Refused>(form.ToDomain(At442)).Problems);

        Assert.Equal("Pitch", problem.Field);
        Assert.Contains("B♭ +10", problem.Message, StringComparison.Ordinal);
        Assert.Equal(typed, form.Typed["Pitch"]);
    }

    [Fact]
    public void A_crow_is_read_against_what_the_student_tunes_to()
    {
        var test = Assert.IsType<Domain.Bench.Test>(Made(Post(EntryKind.Test, ("TestKind", "Crow"), ("Step", "0"), ("Pitch", "C -15")).ToDomain(At442)));

        Assert.Equal(442, test.Pitch!.A4.Value);
        Assert.Equal(-15, test.Pitch.Against(CrowTarget.OnC(At442)).Low.Value, 6);
    }

    [Fact]
    public void A_pitch_left_over_from_another_test_is_not_sent_with_one_that_has_none()
    {
        var test = Assert.IsType<Domain.Bench.Test>(Made(Post(EntryKind.Test, ("TestKind", "Effort"), ("Step", "2"), ("Pitch", "C")).ToDomain(At442)));

        Assert.Null(test.Pitch);
    }

    [Fact]
    public void A_finding_takes_from_its_kind_what_was_not_said()
    {
        var finding = Assert.IsType<Finding>(Made(Post(EntryKind.Finding, ("FindingKind", "tip-corners-thick"), ("KnownBy", "Light,Finger")).ToDomain(At442)));

        Assert.Equal(Zone.TipCorners, finding.Zone);
        Assert.Equal(FindingCharacter.Fault, finding.Character);
        Assert.Equal(KnownBy.Light | KnownBy.Finger, finding.KnownBy);
    }

    [Fact]
    public void Choosing_another_kind_of_finding_moves_only_what_was_usual()
    {
        var form = (FindingForm)Post(EntryKind.Finding, ("FindingKind", "tip-corners-thick"));
        form.TakeUsual(default, Domain.Catalogues.OwnKinds.None);
        form.Typed["Character"] = nameof(FindingCharacter.Taste);
        form.Typed["FindingKind"] = "heart-thick";
        form.TakeUsual(new FindingKindId("tip-corners-thick"), Domain.Catalogues.OwnKinds.None);

        Assert.Equal(nameof(Zone.HeartCentre), form.Typed["Zone"]);
        Assert.Equal(nameof(FindingCharacter.Taste), form.Typed["Character"]);
    }

    [Theory]
    [InlineData("Strokes", "lots")]
    [InlineData("Millimetres", "-2")]
    [InlineData("Amount", "\u0007")]
    public void An_amount_that_cannot_be_taken_is_refused_beside_its_field(string field, string typed)
    {
        var form = Post(EntryKind.Adjustment, ("AdjustmentKind", "clip-hair"), (field, typed));

        Assert.Contains(Assert.IsType<Outcome<BenchEntry>.Refused>(form.ToDomain(At442)).Problems, problem => problem.Field == field);
        Assert.Equal(typed, form.Typed[field]);
    }

    [Fact]
    public void A_posted_form_keeps_its_operation_and_the_entry_it_saw()
    {
        var form = Post(EntryKind.Note, ("Words", "hello"), ("Operation", $"{Id(7)}"), ("Seen", $"{Id(8)}"), ("__RequestVerificationToken", "secret"));

        Assert.Equal(new OperationId(Id(7)), form.Operation);
        Assert.Equal(new EntryId(Id(8)), form.Seen);
        Assert.Equal(["Words"], form.Typed.Fields.Keys);
    }

    [Theory]
    [InlineData("0")]
    [InlineData("-1")]
    [InlineData("NoSuchKind")]
    public void A_post_that_does_not_name_a_kind_is_no_form(string kind) =>
        Assert.Null(EntryForm.Of(new FormCollection(new Dictionary<string, StringValues> { ["Kind"] = kind }), Operation));

    [Fact]
    public void Pointing_at_the_other_side_adds_it_and_at_another_zone_starts_afresh()
    {
        Place? place = null;
        place = place.And(new Place(Zone.Windows, Blades.Upper, Sides.Left));
        Assert.Equal(new Place(Zone.Windows, Blades.Upper, Sides.Left), place);
        place = place.And(new Place(Zone.Windows, Blades.Upper, Sides.Right));
        Assert.Equal(new Place(Zone.Windows, Blades.Upper), place);
        place = place.And(new Place(Zone.Windows, Blades.Lower, Sides.Left));
        Assert.Equal(new Place(Zone.Windows), place);
        Assert.Equal(new Place(Zone.Rails, Blades.Lower, Sides.Left), place.And(new Place(Zone.Rails, Blades.Lower, Sides.Left)));
    }

    private static EntryForm Post(EntryKind kind, params (string Name, string Value)[] fields) => EntryForm.Of(
        new FormCollection(fields.Append((Name: "Kind", Value: kind.ToString())).ToDictionary(field => field.Name, field => new StringValues(field.Value))),
        Operation)!;

    private static BenchEntry Sample(EntryKind kind) => kind switch
    {
        EntryKind.Test => Value(Domain.Bench.Test.Of(TestKind.Crow, 1, Value(SaidPitch.Read("between B and C", At442)), "thin")),
        EntryKind.Finding => Value(Finding.Of(
            new FindingKindId("heart-lopsided"), FindingCharacter.Fault, new Place(Zone.HeartSides, Blades.Upper, Sides.Left), FindingShape.Comparison,
            Relation.ThickerThan, new Place(Zone.HeartSides, Blades.Upper, Sides.Right), KnownBy.Finger | KnownBy.Light, Certainty.Suspected,
            Arose.SeenLaterAlreadyThere, "a little")),
        EntryKind.LookedFor => Value(LookedFor.Of(new FindingKindId("side-leak"), KnownBy.Ear, "twice")),
        EntryKind.FindingEnded => Value(FindingEnded.Of(Root, FindingEnding.Better, "nearly")),
        EntryKind.LeaveAlone => Value(LeaveAlone.Of(new Place(Zone.Spine, Blades.Lower), "good")),
        EntryKind.Adjustment => Value(Adjustment.Of(
            new AdjustmentKindId("clip-hair"), new Place(Zone.TipEdge), new Amount(2, 0.15m, "a breath"), Root, Zone.HeartCentre, "slowly")),
        EntryKind.Risk => Value(Risk.Of("it may split", Zone.TipCorners)),
        EntryKind.RiskClosed => Value(RiskClosed.Of(Root, RiskOutcome.DidNotHappen, "lucky")),
        EntryKind.Note => Value(Note.Of("a note")),
        EntryKind.Stopped => Value(Stopped.Of("it speaks")),
        EntryKind.Parked => Value(Parked.Of("till tomorrow")),
        EntryKind.CauseJudged => Value(CauseJudged.Of(new CauseId("tip-corners-thick"), CauseAnswer.Dismissed)),
        EntryKind.AdviceSetAside => Value(AdviceSetAside.Of(new AdviceId("untested/0"), "I know")),
        _ => Value(Verdict.Of(VerdictKind.NeedsPlayingIn, "a week")),
    };

    private static BenchFact Fact(BenchEntry entry) => BenchLog.Fold(
        [entry.StampedWith(new EntryStamp(Root, new ReedId(Id(3)), 1, new OperationId(Id(4)), DateTimeOffset.UnixEpoch, new AccountId(Id(5))))]).Facts[0];

    private static string Told(BenchEntry entry) => string.Join("; ", entry.GetType().GetProperties()
        .Where(property => property.DeclaringType == entry.GetType()).OrderBy(property => property.Name)
        .Select(property => $"{property.Name}={property.GetValue(entry)}"));

    private static BenchEntry Made(Outcome<BenchEntry> outcome) => Assert.IsType<Outcome<BenchEntry>.Done>(outcome).Value;

    private static T Value<T>(Outcome<T> outcome) => Assert.IsType<Outcome<T>.Done>(outcome).Value;

    private static Guid Id(int n) => new(n, 0, 0, new byte[8]);
}
