"""Work: process, sections, minutes, the work plan and what is left of it, price, climate, exposure, cautions."""

from detailbench.work.cautions import Caution, cautions
from detailbench.work.climate import dew_point
from detailbench.work.exposure import noise, vibration
from detailbench.work.left import Progress, WorkLeft, work_left
from detailbench.work.plan import PanelToDo, PlannedStep, WorkPlan, plan_work
from detailbench.work.price import Line, Price, price
from detailbench.work.process import Process, Step
from detailbench.work.sections import minutes, sections

__all__ = [
    "Caution",
    "Line",
    "PanelToDo",
    "PlannedStep",
    "Price",
    "Process",
    "Progress",
    "Step",
    "WorkLeft",
    "WorkPlan",
    "cautions",
    "dew_point",
    "minutes",
    "noise",
    "plan_work",
    "price",
    "sections",
    "vibration",
    "work_left",
]
