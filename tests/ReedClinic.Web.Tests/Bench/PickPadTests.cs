using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Picks;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Features.Bench.Line;

namespace ReedClinic.Web.Tests.Bench;

/// <summary>The list of picks turns by one’s own hand alone, and each turn is counted: a number means what was read beside it.</summary>
public sealed class PickPadTests : BunitContext
{
    private static readonly AccountId Me = new(Id(5));
    private static readonly AccountId Other = new(Id(6));

    private readonly List<BenchEntry> entries = [];

    public PickPadTests()
    {
        Services.AddLocalization();
        Services.AddSingleton<TimeProvider>(new FakeTimeProvider());
    }

    [Fact]
    public void What_somebody_else_says_leaves_the_steps_of_what_is_tried()
    {
        var pad = Pad();
        pad.Find("[data-bench-name=pick-1]").Click();
        var step = pad.Find("[data-bench-name=pick-3]").GetAttribute("data-say");
        Assert.Contains("TestKind", step, StringComparison.Ordinal);

        Say(Other);
        pad.Render(p => p.Add(c => c.View, View()));

        Assert.Equal((step, "1"), (pad.Find("[data-bench-name=pick-3]").GetAttribute("data-say"), Turn(pad)));
    }

    [Fact]
    public void What_somebody_else_says_leaves_the_list_of_tests_and_ones_own_answer_turns_it_and_is_counted()
    {
        var pad = Pad();

        Say(Other);
        pad.Render(p => p.Add(c => c.View, View()));
        Assert.Equal(("true", "0"), (Trying(pad), Turn(pad)));

        Say(Me);
        pad.Render(p => p.Add(c => c.View, View()));
        Assert.Equal(("false", "1"), (Trying(pad), Turn(pad)));
    }

    [Fact]
    public void A_list_that_was_turned_by_hand_stays_whatever_is_said()
    {
        var pad = Pad();
        pad.Find("[data-bench-name=try]").Click();

        Say(Me);
        pad.Render(p => p.Add(c => c.View, View()));

        Assert.Equal(("true", "1"), (Trying(pad), Turn(pad)));
    }

    private static string? Trying(IRenderedComponent<PickPad> pad) => pad.Find("[data-bench-name=try]").GetAttribute("aria-pressed");

    private static string? Turn(IRenderedComponent<PickPad> pad) => pad.Find(".picks").GetAttribute("data-turn");

    private IRenderedComponent<PickPad> Pad() => Render<PickPad>(p => p.Add(c => c.View, View()).Add(c => c.Picks, PickList.Start).Add(c => c.Me, Me));

    private void Say(AccountId by)
    {
        var n = entries.Count + 1;
        var crow = Assert.IsType<Domain.Outcomes.Outcome<Domain.Bench.Test>.Done>(Domain.Bench.Test.Of(TestKind.Crow, 0)).Value;
        entries.Add(crow.StampedWith(new EntryStamp(new EntryId(Id(1000 + n)), new ReedId(Id(900)), n, new OperationId(Id(2000 + n)), DateTimeOffset.UnixEpoch, by)));
    }

    private BenchView View()
    {
        var n = 100;
        var student = new Student(new StudentId(Id(7)), "Mira");
        var batch = Batch.Announce(
            new BatchId(Id(8)), BatchCode.FromNumber(77), student.Id, new OperationId(Id(9)),
            new AnnouncedBatch(null, new Tuning(new Hertz(442)), null, [new AnnouncedReed("green thread", "it bites", Permission.TakeRisks)], []),
            () => Id(n++), DateTimeOffset.UnixEpoch);
        return new BenchView(student, batch, batch.Reeds[0], BenchLog.Fold(entries), new Dictionary<AccountId, string> { [Me] = "Ines", [Other] = "Orla" }, null);
    }

    private static Guid Id(int n) => new(n, 0, 0, new byte[8]);
}
