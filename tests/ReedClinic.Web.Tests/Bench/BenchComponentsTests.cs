using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Localization;
using Microsoft.Extensions.Time.Testing;
using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Features.Bench;
using ReedClinic.Web.Features.Bench.Fields;
using ReedClinic.Web.Features.Bench.Forms;
using ReedClinic.Web.Features.Bench.Line;
using ReedClinic.Web.Features.Bench.Log;
using ReedClinic.Web.Features.Recordings;
using ReedClinic.Web.Shared.Forms;
using ReedClinic.Web.Shared.ReedMap;

namespace ReedClinic.Web.Tests.Bench;

public sealed class BenchComponentsTests : BunitContext
{
    private static readonly AccountId Me = new(Id(5));

    private readonly List<BenchEntry> entries = [];
    private readonly FakeTimeProvider clock = new();

    public BenchComponentsTests()
    {
        Services.AddLocalization();
        ComponentFactories.AddStub<ReedRecordings>();
        Services.AddSingleton<TimeProvider>(clock);
        clock.SetLocalTimeZone(TimeZoneInfo.CreateCustomTimeZone("Ahead", new TimeSpan(5, 45, 0), null, null));
    }

    private IStringLocalizer<BenchText> T => Services.GetRequiredService<IStringLocalizer<BenchText>>();

    [Fact]
    public void The_test_form_reads_a_pitch_back_while_it_is_typed()
    {
        var form = EntryForm.New(EntryKind.Test, new OperationId(Id(1)));
        form.Typed["TestKind"] = nameof(TestKind.Crow);
        var fields = Fields(form);

        Assert.Contains("A note, and cents", fields.Find("#f-Pitch-hint").TextContent, StringComparison.Ordinal);
        fields.Find("#f-Pitch").Input("C -15");
        Assert.Contains("15 cents below C (A = 442)", Fields(form).Find("#f-Pitch-hint").TextContent, StringComparison.Ordinal);
        Assert.Equal("C -15", form.Typed["Pitch"]);
    }

    [Fact]
    public void While_a_pitch_cannot_be_read_the_hint_says_so_and_shows_what_can_be()
    {
        var form = EntryForm.New(EntryKind.Test, new OperationId(Id(1)));
        form.Typed["TestKind"] = nameof(TestKind.Crow);
        form.Typed["Pitch"] = "C or so";

        Assert.Contains("can’t be read yet. What can be: C, B♭ +10", Fields(form).Find("#f-Pitch-hint").TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("The tip may lose its support.", "The tip may lose its support: did not happen")]
    [InlineData("Will it tear?", "Will it tear? – did not happen")]
    public void A_risk_in_somebodys_own_sentence_is_closed_with_one_mark_between(string risk, string said)
    {
        var root = Say(Value(Risk.Of(risk)));
        Say(Value(RiskClosed.Of(root, RiskOutcome.DidNotHappen)));

        var log = View().Log;

        Assert.Equal(said, new EntryWords(T, log, new Tuning(new Hertz(442))).Say(log.Facts[1].Now!).Title);
    }

    [Fact]
    public void A_question_about_all_the_reeds_stands_apart_from_what_is_said_of_it()
    {
        var margin = Render<ComplaintMargin>(p => p.Add(c => c.View, View(question: "Is it the scraping?")));

        Assert.Contains("Is it the scraping? (about all of them)", margin.Markup.Replace("<span class=\"hint\">", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void The_quiet_line_asks_about_a_finding_on_another_part_than_its_own_name_says()
    {
        var form = EntryForm.New(EntryKind.Finding, new OperationId(Id(1)));
        form.Typed["FindingKind"] = "tip-corners-thick";
        form.Typed["Zone"] = nameof(Zone.TipSides);

        Assert.Equal("“tip corners too thick” is usually said of the tip corners. Chosen here: tip sides.", new QuietLine(T).For(View(), form));
        form.Typed["Zone"] = nameof(Zone.TipCorners);
        Assert.Null(new QuietLine(T).For(View(), form));
        form.Typed["FindingKind"] = "tip-cracked";
        Assert.Null(new QuietLine(T).For(View(), form));
    }

    [Fact]
    public void The_answer_stands_after_the_save_and_a_refusal_leads_to_its_field()
    {
        var session = new BenchSession(null!, null!, TimeProvider.System);
        var answer = Render<EntryAnswer>(p => p.Add(c => c.Session, session).Add(c => c.View, View()));

        Assert.Equal("status", answer.Find("#entry-answer").GetAttribute("role"));
        Assert.Equal("", answer.Find("#entry-answer").TextContent.Trim());
        Assert.Equal("f-Zone", EntryAnswer.FieldOf(new("Place", "")));
    }

    [Fact]
    public void A_number_on_the_drawing_chooses_the_place_of_its_mark()
    {
        Place? chosen = null;
        var place = new Place(Zone.HeartSides, Blades.Upper, Sides.Left);
        var map = Render<ReedMap>(p => p
            .Add(c => c.Marks, [new ReedMark(place, MarkKind.Fault, "thick")])
            .Add(c => c.ZoneChosen, (Place pointed) => chosen = pointed));

        map.Find(".pressable-disc").Click();

        Assert.Equal(place, chosen);
    }

    [Fact]
    public void A_problem_stands_beside_its_field_and_the_text_stays()
    {
        var form = EntryForm.New(EntryKind.Test, new OperationId(Id(1)));
        form.Typed["TestKind"] = nameof(TestKind.Crow);
        form.Typed["Pitch"] = "H";

        var fields = Fields(form, new ProblemList([new("Pitch", "Say which note you hear.")]));

        Assert.Equal("H", fields.Find("#f-Pitch").GetAttribute("value"));
        Assert.Equal("true", fields.Find("#f-Pitch").GetAttribute("aria-invalid"));
        Assert.Equal("f-Pitch-error", fields.Find("#f-Pitch").GetAttribute("aria-describedby"));
    }

    [Fact]
    public void Several_ways_of_knowing_are_ticked_one_by_one()
    {
        var form = EntryForm.New(EntryKind.LookedFor, new OperationId(Id(1)));
        var fields = Fields(form);

        fields.Find("input[value=Light]").Change(true);
        fields.Find("input[value=Ear]").Change(true);
        fields.Find("input[value=Light]").Change(false);

        Assert.Equal("Ear", form.Typed["KnownBy"]);
    }

    [Fact]
    public void A_comparison_asks_for_the_other_place_and_a_spot_does_not()
    {
        var form = EntryForm.New(EntryKind.Finding, new OperationId(Id(1)));

        var fields = Fields(form);
        Assert.Empty(fields.FindAll("#f-OtherPlaceZone"));
        fields.Find("input[value=Comparison]").Change("Comparison");
        Assert.NotEmpty(Fields(form).FindAll("#f-OtherPlaceZone"));
    }

    [Theory]
    [MemberData(nameof(EntryFormTests.Kinds), MemberType = typeof(EntryFormTests))]
    public void Every_field_of_every_kind_of_entry_has_a_label(string kind)
    {
        var fields = Fields(EntryForm.New(Enum.Parse<EntryKind>(kind), new OperationId(Id(1))));

        Assert.All(fields.FindAll("select, textarea, input[type=text]"), field => Assert.NotNull(fields.Find($"label[for={field.Id}]")));
        Assert.All(fields.FindAll("fieldset"), set => Assert.False(string.IsNullOrWhiteSpace(set.QuerySelector("legend")?.TextContent)));
    }

    [Fact]
    public void The_log_runs_from_arrival_down_with_the_crows_step_in_each_pass()
    {
        Say(Crow("B +20"));
        Say(Value(Adjustment.Of(new AdjustmentKindId("clip-hair"), new Place(Zone.TipEdge))));
        Say(Crow("C -10"));

        var log = Render<LogPasses>(p => p.Add(c => c.View, View()));

        Assert.Equal(["As it arrived", "Pass 1"], log.FindAll("h3").Select(h => h.TextContent));
        Assert.All(log.FindAll(".log-line > .by"), by => Assert.Contains("05:45", by.TextContent, StringComparison.Ordinal)); // in the studio's zone; it was midnight in UTC
        Assert.Equal(["crow 80 cents below C", "crow 10 cents below C"], log.FindAll(".crow-step").Select(s => s.TextContent));
    }

    [Fact]
    public void The_crows_way_is_drawn_for_wide_and_narrow_and_told_once()
    {
        Say(Crow("B +20"));
        Say(Value(Adjustment.Of(new AdjustmentKindId("clip-hair"), new Place(Zone.TipEdge))));
        Say(Crow("C -10"));

        var way = Render<CrowGraph>(p => p.Add(c => c.View, View()));

        Assert.Equal("The crow, pass by pass", Assert.Single(way.FindAll("[role=img]")).GetAttribute("aria-label"));
        Assert.All(way.FindAll("svg"), drawing => Assert.Equal("true", drawing.GetAttribute("aria-hidden")));
        Assert.Equal(["0 0 680 136", "0 0 340 124"], way.FindAll("svg").Select(drawing => drawing.GetAttribute("viewBox")));
        Assert.All(way.FindAll("svg"), drawing => Assert.Equal(2, drawing.QuerySelectorAll("circle").Length));
        Assert.Equal("From 80 cents below C to 10 cents below C in one pass.", way.Find("figcaption span").TextContent);
        Assert.Equal(["pass 1: Clip a hair: 70 cents up"], way.FindAll(".crow-steps li").Select(step => step.TextContent));
    }

    [Fact]
    public void A_line_can_be_said_better_by_a_button_that_names_it()
    {
        BenchFact? asked = null;
        var root = Say(Value(Note.Of("a slip")));
        var log = Render<LogPasses>(p => p.Add(c => c.View, View()).Add(c => c.Corrected, (BenchFact fact) => asked = fact));

        log.Find("button[aria-label='Correct: a slip']").Click();

        Assert.Equal(root, asked!.Root);
    }

    [Fact]
    public void Arrival_and_now_stand_beside_each_other_and_say_which_way_it_went()
    {
        Say(Value(Domain.Bench.Test.Of(TestKind.Opening, 4)));
        Say(Value(Adjustment.Of(new AdjustmentKindId("close-press"), new Place(Zone.Opening))));
        Say(Value(Domain.Bench.Test.Of(TestKind.Opening, 2)));

        var strip = Render<NowStrip>(p => p.Add(c => c.Log, View().Log));

        var cell = strip.Find("dl > div").TextContent;
        Assert.Contains("very open", cell, StringComparison.Ordinal);
        Assert.Contains("right", cell, StringComparison.Ordinal);
        Assert.Contains("better", cell, StringComparison.Ordinal);
    }

    [Fact]
    public void The_quiet_line_remembers_what_is_to_be_left_alone()
    {
        Say(Value(LeaveAlone.Of(new Place(Zone.HeartCentre, Blades.Upper), "good cane")));
        var form = Work("dust-heart");

        Assert.Contains("good cane", new QuietLine(T).For(View(Permission.TakeRisks), form), StringComparison.Ordinal);
        form.Typed["Blades"] = nameof(Blades.Lower);
        Assert.DoesNotContain("good cane", new QuietLine(T).For(View(Permission.TakeRisks), form) ?? "", StringComparison.Ordinal);
    }

    [Fact]
    public void The_quiet_line_remembers_it_also_while_the_work_there_is_corrected()
    {
        Say(Value(LeaveAlone.Of(new Place(Zone.HeartCentre, Blades.Upper), "good cane")));
        var done = Say(Value(Adjustment.Of(new AdjustmentKindId("dust-heart"), new Place(Zone.HeartCentre))));
        var form = (AdjustmentForm)EntryForm.Correcting(BenchLog.Fold(entries).FactOf(done)!, new OperationId(Id(2)));

        Assert.Contains("good cane", new QuietLine(T).For(View(Permission.TakeRisks), form), StringComparison.Ordinal);
    }

    [Fact]
    public void The_quiet_line_tells_of_an_open_risk_and_says_nothing_where_nothing_is_done()
    {
        Say(Value(Risk.Of("the tip may tear")));

        Assert.Contains("the tip may tear", new QuietLine(T).For(View(Permission.TakeRisks), Work("clip-hair")), StringComparison.Ordinal);
        Assert.Null(new QuietLine(T).For(View(), EntryForm.New(EntryKind.Test, default)));
    }

    [Theory]
    [InlineData(Permission.AdviseOnly, "clip-hair", "advice only")]
    [InlineData(Permission.SafeChangesOnly, "clip", "more than a small step")]
    [InlineData(Permission.TakeRisks, "clip-hair", "away from the hand")]
    public void The_quiet_line_minds_the_permission_and_then_the_knife(Permission permission, string kind, string said) =>
        Assert.Contains(said, new QuietLine(T).For(View(permission), Work(kind)), StringComparison.Ordinal);

    [Fact]
    public void What_would_be_advised_once_a_line_is_recorded_stands_with_what_was_understood_of_it()
    {
        Say(Crow("C +40"));
        var heard = HeardLine.Of("clipped a hair, corners thinned", View().Log, View().Batch.CrowTarget.Tuning);
        var cards = Render<HeardCards>(p => p.Add(c => c.View, View()).Add(c => c.Heard, heard).Add(c => c.Advised, new AdviceId("permission/safe-only")));
        var beside = cards.FindAll(".beside").Select(line => line.TextContent).ToList();
        Assert.Equal("The latest crow stands 40 cents above C: a clip takes it higher.", beside[0]);
        Assert.DoesNotContain(beside, line => line.Contains("safe changes only", StringComparison.Ordinal));
    }

    [Fact]
    public void A_crow_on_its_note_is_told_as_on_it()
    {
        Say(Crow("C"));
        Assert.Contains("on C", Render<NowStrip>(p => p.Add(c => c.Log, View().Log).Add(c => c.Tuning, View().Batch.CrowTarget.Tuning)).Markup, StringComparison.Ordinal);
    }

    private static AdjustmentForm Work(string kind)
    {
        var form = (AdjustmentForm)EntryForm.New(EntryKind.Adjustment, new OperationId(Id(1)));
        form.Typed["AdjustmentKind"] = kind;
        form.TakeUsual(default, Domain.Catalogues.OwnKinds.None);
        return form;
    }

    private IRenderedComponent<EntryFields> Fields(EntryForm form, ProblemList? problems = null) => Render<EntryFields>(p => p
        .Add(c => c.View, View())
        .AddCascadingValue(new EntryEditing(form, problems ?? ProblemList.None, _ => Task.CompletedTask)));

    private BenchView View(Permission permission = Permission.SafeChangesOnly, string? question = null)
    {
        var student = new Student(new StudentId(Id(6)), "Mira");
        var n = 100;
        var batch = Batch.Announce(
            new BatchId(Id(7)), BatchCode.FromNumber(77), student.Id, new OperationId(Id(8)),
            new AnnouncedBatch(null, new Tuning(new Hertz(442)), null, [new AnnouncedReed("green thread", "it bites", permission)], question is null ? [] : [question]),
            () => Id(n++), DateTimeOffset.UnixEpoch);
        return new BenchView(student, batch, batch.Reeds[0], BenchLog.Fold(entries), new Dictionary<AccountId, string> { [Me] = "Ines" }, null);
    }

    private static Domain.Bench.Test Crow(string pitch) =>
        Value(Domain.Bench.Test.Of(TestKind.Crow, 0, Value(SaidPitch.Read(pitch, new Tuning(new Hertz(442))))));

    private EntryId Say(BenchEntry entry)
    {
        var n = entries.Count + 1;
        var id = new EntryId(Id(1000 + n));
        entries.Add(entry.StampedWith(new EntryStamp(id, new ReedId(Id(900)), n, new OperationId(Id(2000 + n)), DateTimeOffset.UnixEpoch, Me)));
        return id;
    }

    private static T1 Value<T1>(Domain.Outcomes.Outcome<T1> outcome) => Assert.IsType<Domain.Outcomes.Outcome<T1>.Done>(outcome).Value;

    private static Guid Id(int n) => new(n, 0, 0, new byte[8]);
}
