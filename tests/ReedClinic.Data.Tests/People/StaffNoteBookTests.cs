using ReedClinic.Data.People;
using ReedClinic.Data.Tests.Intake;
using ReedClinic.Domain.Outcomes;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.People;

public sealed class StaffNoteBookTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task A_note_is_kept_and_nobody_overwrites_what_they_have_not_seen(ClinicEngine engine)
    {
        var db = await databases.OpenAsync(engine);
        var student = (await new IntakeScene(db).StudentAsync()).Student!.Value;
        var notes = new StaffNoteBook(db, TimeProvider.System);
        var operation = Operation();

        var first = Done(await notes.WriteAsync(Teacher, student, "  Left-handed.\r\nPatience. ", Guid.Empty, operation, Ct));
        var again = Done(await notes.WriteAsync(Teacher, student, "another try", Guid.Empty, operation, Ct));
        var blind = await notes.WriteAsync(Teacher, student, "over it", Guid.Empty, Operation(), Ct);
        var seen = Done(await notes.WriteAsync(Teacher, student, "", first.Version, Operation(), Ct));

        Assert.Equal("Left-handed.\nPatience.", first.Words);
        Assert.Equal(first, again);
        Assert.Equal(first, Assert.IsType<Outcome<StaffNoteView>.Conflict>(blind).Theirs);
        Assert.Equal("", seen.Words);
    }
}
