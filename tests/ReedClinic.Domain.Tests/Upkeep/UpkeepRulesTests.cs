using ReedClinic.Domain.Upkeep;

namespace ReedClinic.Domain.Tests.Upkeep;

/// <summary>What wants a look, and when. The borders are our own choices; 10 % of a disk is common practice.</summary>
public sealed class UpkeepRulesTests
{
    private static readonly DateTimeOffset Now = new(2026, 3, 2, 9, 0, 0, TimeSpan.Zero);

    private static readonly UpkeepFacts Well = new(Now, Now.AddHours(-5), 40L << 30, 100L << 30, 0, null, 0, true, 0, 0, 1L << 30, 40L << 30, 5L << 20) { RecordsFree = 40L << 30, RecordsSize = 100L << 30 };

    [Fact]
    public void Where_nothing_is_amiss_every_matter_is_well_and_told_once()
    {
        var lines = UpkeepRules.Judge(Well);
        Assert.Equal(Enum.GetValues<UpkeepMatter>(), lines.Select(line => line.Matter));
        Assert.All(lines, line => Assert.Equal(UpkeepState.Well, line.State));
    }

    [Theory]
    [InlineData(36, UpkeepState.Well)]
    [InlineData(37, UpkeepState.Soon)]
    [InlineData(168, UpkeepState.Soon)]
    [InlineData(169, UpkeepState.Today)]
    public void A_back_up_grows_old(int hours, UpkeepState state) =>
        Assert.Equal(state, Of(Well with { LastBackup = Now.AddHours(-hours) }, UpkeepMatter.Backup));

    [Fact]
    public void No_back_up_at_all_is_for_today() => Assert.Equal(UpkeepState.Today, Of(Well with { LastBackup = null }, UpkeepMatter.Backup));

    [Theory]
    [InlineData(100, 10.0, UpkeepState.Well)]
    [InlineData(100, 9.9, UpkeepState.Soon)]
    [InlineData(100, 2.9, UpkeepState.Today)]
    [InlineData(10, 1.9, UpkeepState.Soon)]
    [InlineData(10, 0.49, UpkeepState.Today)]
    public void Room_is_judged_by_share_and_by_bytes(int size, double free, UpkeepState state) =>
        Assert.Equal(state, Of(Well with { DiskSize = (long)size << 30, DiskFree = (long)(free * (1L << 30)) }, UpkeepMatter.Disk));

    [Theory]
    [InlineData(100, 10.0, UpkeepState.Well)]
    [InlineData(100, 9.9, UpkeepState.Soon)]
    [InlineData(10, 0.49, UpkeepState.Today)]
    public void The_records_disk_is_judged_for_itself(int size, double free, UpkeepState state)
    {
        var facts = Well with { RecordsSize = (long)size << 30, RecordsFree = (long)(free * (1L << 30)) };
        Assert.Equal((state, UpkeepState.Well), (Of(facts, UpkeepMatter.Records), Of(facts, UpkeepMatter.Disk)));
    }

    [Fact]
    public void A_machine_that_does_not_tell_its_room_wants_a_look_and_a_server_of_its_own_is_anothers_to_watch()
    {
        Assert.Equal(UpkeepState.Soon, Of(Well with { DiskFree = null, DiskSize = null }, UpkeepMatter.Disk));
        Assert.Equal(UpkeepState.Soon, Of(Well with { RecordsFree = null, RecordsSize = null }, UpkeepMatter.Records));
        Assert.Equal(UpkeepState.Well, Of(Well with { RecordsFree = null, RecordsSize = null, RecordsAreElsewhere = true }, UpkeepMatter.Records));
    }

    [Theory]
    [InlineData(0, UpkeepState.Soon)]
    [InlineData(10, UpkeepState.Soon)]
    [InlineData(11, UpkeepState.Today)]
    public void Work_that_fails_is_told_at_once_and_is_for_today_when_it_goes_on(int minutes, UpkeepState state) =>
        Assert.Equal(state, Of(Well with { Stumbling = [new(QuietWork.Wire, Now, 1), new(QuietWork.Mail, Now.AddMinutes(-minutes), 3)] }, UpkeepMatter.Workers));

    [Theory]
    [InlineData(10, 0, UpkeepState.Well)]
    [InlineData(11, 0, UpkeepState.Soon)]
    [InlineData(121, 0, UpkeepState.Today)]
    [InlineData(null, 1, UpkeepState.Soon)]
    public void Work_that_waits_long_or_was_given_up_is_told(int? minutes, int givenUp, UpkeepState state) =>
        Assert.Equal(state, Of(Well with { WorkDue = minutes is null ? 0 : 1, OldestDue = minutes is { } ago ? Now.AddMinutes(-ago) : null, WorkGivenUp = givenUp }, UpkeepMatter.Work));

    [Theory]
    [InlineData(true, 0, 0, UpkeepState.Well)]
    [InlineData(false, 0, 0, UpkeepState.Well)] // a studio may do without
    [InlineData(true, 1, 0, UpkeepState.Soon)]
    [InlineData(true, 0, 1, UpkeepState.Today)]
    public void Mail_that_failed_is_told(bool on, int failing, int givenUp, UpkeepState state) =>
        Assert.Equal(state, Of(Well with { MailIsOn = on, MailsFailing = failing, MailsGivenUp = givenUp }, UpkeepMatter.Mail));

    [Fact]
    public void Mail_that_nobody_gets_is_told() =>
        Assert.Equal(UpkeepState.Soon, Of(Well with { MailIsOn = true, MailGoesToFolder = true }, UpkeepMatter.Mail));

    [Theory]
    [InlineData(79, UpkeepState.Well)]
    [InlineData(80, UpkeepState.Soon)]
    [InlineData(95, UpkeepState.Today)]
    public void Sounds_and_photographs_fill_up(int percent, UpkeepState state) =>
        Assert.Equal(state, Of(Well with { MediaBytes = percent, MediaCap = 100 }, UpkeepMatter.Media));

    private static UpkeepState Of(UpkeepFacts facts, UpkeepMatter matter) => UpkeepRules.Judge(facts).Single(line => line.Matter == matter).State;
}
