using ReedClinic.Domain.People;

namespace ReedClinic.Domain.Tests.People;

public sealed class OperationIdTests
{
    private static readonly Guid One = new("0199c1e4-7c00-7a11-9d20-3f5b1c6e8a01");
    private static readonly Guid Other = new("0199c1e4-7c00-7a11-9d20-3f5b1c6e8a02");

    [Fact]
    public void The_version_after_an_operation_is_the_same_for_the_same_and_another_for_any_other()
    {
        var after = new OperationId(One).VersionAfter(Other);

        Assert.Equal(after, new OperationId(One).VersionAfter(Other));
        Assert.Equal(4, new HashSet<Guid> { after, Other, new OperationId(Other).VersionAfter(One), new OperationId(One).VersionAfter(One) }.Count);
    }
}
