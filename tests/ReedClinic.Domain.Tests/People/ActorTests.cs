using ReedClinic.Domain.People;

namespace ReedClinic.Domain.Tests.People;

public sealed class ActorTests
{
    private static readonly AccountId SomeAccount = new(new Guid("0197a000-0000-7000-8000-000000000001"));

    [Theory]
    [InlineData(false, false, false)]
    [InlineData(true, false, true)]
    [InlineData(false, true, true)]
    [InlineData(true, true, true)]
    public void Only_a_teacher_or_an_owner_works_here(bool isTeacher, bool isOwner, bool worksHere)
    {
        Assert.Equal(worksHere, new Actor(SomeAccount, null, isTeacher, isOwner).WorksHere);
    }
}
