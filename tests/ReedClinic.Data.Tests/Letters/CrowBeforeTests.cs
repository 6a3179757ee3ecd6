using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Letters;
using ReedClinic.Data.Tests.Intake;
using ReedClinic.Domain.Drawings;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Letters;

/// <summary>What letters held before they held passes and cents.</summary>
public sealed class CrowBeforeTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    // A crow's way used to be kept in places on its drawing: 12 units for the 60 cents of the band.
    [Theory, OnBothEngines]
    public async Task A_letter_that_was_kept_with_a_drawn_crow_is_read_in_passes_and_cents(ClinicEngine engine)
    {
        const string Drawn = """
            {"Note":"C","Sentence":"From there to C","Steps":["A clip of 0.1 mm: 70 cents up","What was done with the corners: no change"],
            "Dots":[{"X":92,"Y":78,"Top":78,"Foot":78,"Label":"came"},{"X":366,"Y":64,"Top":60,"Foot":68,"Label":"1"},{"X":640,"Y":64,"Top":64,"Foot":64,"Label":""}],
            "Words":[{"X":229,"Y":50,"Lines":["clip 0.1 mm"]},{"X":503,"Y":50,"Lines":["corners, whole and\u2026"]}],
            "Line":"M92,78H106V64H366","Gaps":"M366,64H380V64H640","BandTop":58,"BandFoot":70,"Aim":64}
            """;
        var studio = await databases.OpenAsync(engine);
        var intake = new IntakeScene(studio);
        var batch = (await intake.BatchAsync(await intake.StudentAsync(), reeds: 2)).Batch;
        var fine = new ReedArrival(Presence.Here, Fitness: Fitness.Fit);
        Done(await intake.Arrival.RecordAsync(Teacher, batch.Id, new(batch.Reeds.ToDictionary(reed => reed.Id, _ => fine), null), batch.Version, Operation(), Ct));
        var book = new LetterBook(studio, TimeProvider.System, studio.Outbox);
        Done(await book.SaveAsync(Teacher, batch.Code, new Dictionary<string, string> { ["habit"] = "Hers." }, (await book.ReadAsync(Teacher, batch.Code, Ct))!.Version, Operation(), Ct));
        await using (var db = studio.CreateDbContext())
        {
            var payload = await db.Set<LetterVersion>().Select(version => version.Payload).SingleAsync(Ct);
            var before = payload.Replace("\"Crow\":null", $"\"Crow\":{Drawn}", StringComparison.Ordinal);
            Assert.NotEqual(payload, before);
            await db.LetLettersChangeAsync(Ct); // a version never changes otherwise
            await db.Set<LetterVersion>().ExecuteUpdateAsync(rows => rows.SetProperty(row => row.Payload, before), Ct);
        }

        var crow = (await book.VersionAsync(Teacher, batch.Code, 1, Ct))!.Reeds[0].Crow!;

        Assert.Equal(("C", (double?)null, "From there to C"), (crow.Note, crow.A4, crow.Sentence));
        Assert.Equal([new(0, -70, -70), new(1, -20, 20), new CrowHeard(1, 0, 0)], crow.Heard);
        Assert.Equal([("clip 0.1 mm", "70 cents up", false), ("What was done with the corners", "no change", true)], crow.Moves.Select(move => (Assert.Single(move.Work), move.Change, move.HasGap)));
    }
}
