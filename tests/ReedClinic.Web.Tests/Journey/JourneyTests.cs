using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Features.Journey;
using ReedClinic.Web.Shared;

namespace ReedClinic.Web.Tests.Journey;

public sealed class JourneyTests : BunitContext
{
    private static readonly DateTimeOffset Now = new(2026, 5, 20, 14, 5, 0, TimeSpan.Zero);

    public JourneyTests()
    {
        Services.AddLocalization();
        Services.AddSingleton<TimeProvider>(new FakeTimeProvider(Now));
    }

    [Theory]
    [InlineData("2026-05-20T08:30:00Z", "today at 08:30")]
    [InlineData("2026-05-03T08:30:00Z", "3 May")]
    [InlineData("2025-12-31T08:30:00Z", "31 December 2025")]
    public void A_moment_is_said_as_a_person_says_it(string at, string said)
    {
        var moment = Render<Moment>(p => p.Add(m => m.At, DateTimeOffset.Parse(at, System.Globalization.CultureInfo.InvariantCulture)));

        Assert.Equal(said, moment.Find("time").TextContent);
        Assert.Equal(at, moment.Find("time").GetAttribute("datetime"));
    }

    [Fact]
    public void A_batch_shows_the_day_of_each_stage_it_reached_and_marks_where_it_is()
    {
        var batch = Batch.Announce(
            new BatchId(Guid.CreateVersion7(Now)),
            BatchCode.FromNumber(7),
            new StudentId(Guid.CreateVersion7(Now)),
            new OperationId(Guid.CreateVersion7(Now)),
            new AnnouncedBatch(null, null, null, [new AnnouncedReed("blue thread", "It is flat.", Permission.AdviseOnly)], []),
            () => Guid.CreateVersion7(Now),
            Now.AddDays(-6));
        batch.Reach(Stage.Here, Now.AddDays(-2));

        var path = Render<StagePath>(p => p.Add(s => s.Batch, batch));

        var stages = path.FindAll("li");
        Assert.Equal(6, stages.Count);
        Assert.Contains("14 May", stages[0].TextContent, StringComparison.Ordinal);
        Assert.Contains("18 May", stages[1].TextContent, StringComparison.Ordinal);
        Assert.Equal([1], stages.Select((s, i) => (s, i)).Where(x => x.s.GetAttribute("aria-current") == "step").Select(x => x.i));
        Assert.All(stages.Skip(2), s => Assert.Contains("to come", s.TextContent, StringComparison.Ordinal));
    }

    [Fact]
    public void A_reed_case_holds_as_many_reeds_as_the_batch_and_lifts_the_one_spoken_of()
    {
        var drawn = Render<ReedCase>(p => p.Add(c => c.Count, 5).Add(c => c.Lifted, 2));

        Assert.Equal(5, drawn.FindAll("g").Count);
        Assert.Equal("lifted", drawn.FindAll("g")[1].ClassName);
    }
}
