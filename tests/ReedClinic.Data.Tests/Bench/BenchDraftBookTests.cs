using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Tests.Bench;

public sealed class BenchDraftBookTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory, OnBothEngines]
    public async Task What_is_typed_is_kept_for_each_teacher_and_reed(ClinicEngine engine)
    {
        var (drafts, one, other) = await DraftsAsync(engine);

        Assert.True(await drafts.KeepAsync(Studio.Ada, one, "ada", Ct));
        Assert.True(await drafts.KeepAsync(Studio.Ben, one, "ben", Ct));
        Assert.True(await drafts.KeepAsync(Studio.Ada, one, "ada, later", Ct));

        Assert.Equal("ada, later", await drafts.FindAsync(Studio.Ada, one, Ct));
        Assert.Equal("ben", await drafts.FindAsync(Studio.Ben, one, Ct));
        Assert.Null(await drafts.FindAsync(Studio.Ada, other, Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_dropped_draft_is_gone_and_nobody_elses_is(ClinicEngine engine)
    {
        var (drafts, reed, _) = await DraftsAsync(engine);
        await drafts.KeepAsync(Studio.Ada, reed, "ada", Ct);
        await drafts.KeepAsync(Studio.Ben, reed, "ben", Ct);

        await drafts.DropAsync(Studio.Ada, reed, Ct);
        await drafts.DropAsync(Studio.Ada, reed, Ct);

        Assert.Null(await drafts.FindAsync(Studio.Ada, reed, Ct));
        Assert.Equal("ben", await drafts.FindAsync(Studio.Ben, reed, Ct));
    }

    [Theory, OnBothEngines]
    public async Task Ten_tabs_that_begin_a_draft_at_once_leave_one(ClinicEngine engine)
    {
        var (drafts, reed, _) = await DraftsAsync(engine);

        await Task.WhenAll(Enumerable.Range(0, 10).Select(n => Task.Run(() => drafts.KeepAsync(Studio.Ada, reed, $"tab {n}", Ct), Ct)));

        Assert.StartsWith("tab ", await drafts.FindAsync(Studio.Ada, reed, Ct), StringComparison.Ordinal);
    }

    [Theory, OnBothEngines]
    public async Task Who_does_not_work_here_keeps_nothing_and_a_reed_that_is_not_there_takes_nothing(ClinicEngine engine)
    {
        var (drafts, reed, _) = await DraftsAsync(engine);

        Assert.False(await drafts.KeepAsync(Studio.Stranger, reed, "x", Ct));
        Assert.Null(await drafts.FindAsync(Studio.Stranger, reed, Ct));
        Assert.False(await drafts.KeepAsync(Studio.Ada, new ReedId(Studio.NewGuid()), "x", Ct));
        Assert.False(await drafts.KeepAsync(Studio.Ada, reed, new string('x', BenchDraft.LongestTyped + 1), Ct));
    }

    private async Task<(BenchDraftBook Drafts, ReedId One, ReedId Other)> DraftsAsync(ClinicEngine engine)
    {
        var database = await databases.OpenAsync(engine);
        var studio = new Studio(database);
        return (new BenchDraftBook(database, TimeProvider.System), (await studio.ReedAsync()).Id, (await studio.ReedAsync()).Id);
    }
}
