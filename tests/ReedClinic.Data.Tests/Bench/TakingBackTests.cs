using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Recurrence;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Tests.Bench;

/// <summary>What was said is taken back wherever in the log it stands, and comes back in its own place.</summary>
public sealed class TakingBackTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory, OnBothEngines]
    public async Task An_entry_further_back_is_taken_back_whoever_said_it_and_can_be_said_again_in_its_own_place(ClinicEngine engine)
    {
        var db = await databases.OpenAsync(engine);
        var (book, reed) = (new BenchBook(db, TimeProvider.System), (await new Studio(db).ReedAsync()).Id);
        var found = Studio.Value(await book.RecordAsync(Studio.Ada, reed, Studio.Found("tip-thick"), Studio.Operation(), Ct));
        Studio.Value(await book.RecordAsync(Studio.Ben, reed, Studio.Note("later"), Studio.Operation(), Ct));

        var gone = Studio.Value(await book.TakeBackAsync(Studio.Ben, reed, found.Tail, Studio.Operation(), Ct));

        Assert.Equal((found.Root, FactState.TakenBack), (gone.Root, gone.State));
        Assert.Empty(await SheetAsync(db, reed));
        Assert.IsType<Outcome<BenchFact>.Conflict>(await book.TakeBackAsync(Studio.Ada, reed, found.Tail, Studio.Operation(), Ct));
        Assert.IsType<Outcome<BenchFact>.Conflict>(await book.TakeBackAsync(Studio.Ada, reed, gone.Tail, Studio.Operation(), Ct));
        Assert.IsType<Outcome<BenchFact>.NotFound>(await book.TakeBackAsync(Studio.Ada, reed, new EntryId(Studio.NewGuid()), Studio.Operation(), Ct));
        Assert.IsType<Outcome<BenchFact>.NotFound>(await book.TakeBackAsync(Studio.Stranger, reed, gone.Tail, Studio.Operation(), Ct));
        var log = (await book.FindAsync(Studio.Ben, reed, Ct))!.Log;
        Assert.Equal(found.Root, log.WithdrawnBy(Studio.Ben.Account)?.Root);

        Studio.Value(await book.CorrectAsync(Studio.Ben, reed, gone.Tail, gone.Withdrawn!, Studio.Operation(), Ct));

        Assert.True(Assert.Single(await SheetAsync(db, reed)).Found);
        log = (await book.FindAsync(Studio.Ben, reed, Ct))!.Log;
        Assert.Equal(found.Root, Assert.Single(log.Live<Finding>()).Root);
        Assert.Null(log.WithdrawnBy(Studio.Ben.Account));
    }

    private static async Task<List<SheetRow>> SheetAsync(TestDatabase db, ReedId reed)
    {
        await using var context = db.CreateDbContext();
        return await context.Set<SheetRow>().Where(row => row.ReedId == reed).ToListAsync(Ct);
    }
}
