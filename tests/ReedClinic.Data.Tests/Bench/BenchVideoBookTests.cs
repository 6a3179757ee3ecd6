using ReedClinic.Data.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Tests.Bench;

/// <summary>Where the video of a reed’s work can be seen is kept with the reed, by whoever works here.</summary>
public sealed class BenchVideoBookTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private const string Link = "https://video.example/bench";

    private static readonly DateTimeOffset From = new(2026, 3, 9, 10, 0, 5, TimeSpan.Zero);

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory, OnBothEngines]
    public async Task An_address_and_a_beginning_are_kept_until_others_take_their_place(ClinicEngine engine)
    {
        var database = await databases.OpenAsync(engine);
        var (videos, reed) = (new BenchVideoBook(database), (await new Studio(database).ReedAsync()).Id);

        Assert.IsType<Outcome<Reed>.Done>(await videos.KeepAsync(Studio.Ada, reed, default, Link, From, Ct));
        Assert.IsType<Outcome<Reed>.Refused>(await videos.KeepAsync(Studio.Ada, reed, (Link, From), "javascript:alert(1)", null, Ct));
        Assert.Equal((Link, From), await KeptAsync(database, reed));

        Assert.IsType<Outcome<Reed>.Done>(await videos.KeepAsync(Studio.Ben, reed, (Link, From), " ", null, Ct));
        Assert.Equal((null, null), await KeptAsync(database, reed));
    }

    [Theory, OnBothEngines]
    public async Task A_page_that_was_opened_before_somebody_else_kept_another_takes_nothing_away_and_the_same_twice_is_once(ClinicEngine engine)
    {
        var database = await databases.OpenAsync(engine);
        var (videos, reed) = (new BenchVideoBook(database), (await new Studio(database).ReedAsync()).Id);
        Assert.IsType<Outcome<Reed>.Done>(await videos.KeepAsync(Studio.Ada, reed, default, Link, From, Ct));

        var theirs = Assert.IsType<Outcome<Reed>.Conflict>(await videos.KeepAsync(Studio.Ben, reed, default, "", From.AddHours(1), Ct)).Theirs;

        Assert.Equal((Link, From), (theirs.VideoLink, theirs.VideoFrom));
        Assert.Equal((Link, From), await KeptAsync(database, reed));
        Assert.IsType<Outcome<Reed>.Done>(await videos.KeepAsync(Studio.Ada, reed, default, Link, From, Ct));
        Assert.IsType<Outcome<Reed>.Conflict>(await videos.KeepAsync(Studio.Ben, reed, (Link, From.AddHours(1)), "", From, Ct));
    }

    [Theory, OnBothEngines]
    public async Task Who_does_not_work_here_keeps_nothing_and_a_reed_that_is_not_there_takes_nothing(ClinicEngine engine)
    {
        var database = await databases.OpenAsync(engine);
        var (videos, reed) = (new BenchVideoBook(database), (await new Studio(database).ReedAsync()).Id);

        Assert.IsType<Outcome<Reed>.NotFound>(await videos.KeepAsync(Studio.Stranger, reed, default, Link, From, Ct));
        Assert.IsType<Outcome<Reed>.NotFound>(await videos.KeepAsync(Studio.Ada, new ReedId(Studio.NewGuid()), default, Link, From, Ct));
        Assert.Equal((null, null), await KeptAsync(database, reed));
    }

    private static async Task<(string? Link, DateTimeOffset? From)> KeptAsync(TestDatabase database, ReedId reed)
    {
        var view = await new BenchBook(database, TimeProvider.System).FindAsync(Studio.Ada, reed, Ct);
        return (view!.Reed.VideoLink, view.Reed.VideoFrom);
    }
}
